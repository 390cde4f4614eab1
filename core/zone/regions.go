package zone

// region is a name people know a place by, with its zone. Where it stands for a
// stretch of ground its middle is given, to about half a degree and from common
// knowledge; it serves to find the nearest zone and nothing else.
type region struct {
	name, zone string
	lat, lon   float64
}

func (r region) placed() bool { return r.lat != 0 || r.lon != 0 }

const (
	pacific  = "America/Los_Angeles"
	mountain = "America/Denver"
	central  = "America/Chicago"
	eastern  = "America/New_York"
)

// regions are the common names of zones, the states, and the walnut-growing
// regions of the world.
var regions = []region{
	{"pacific", pacific, 0, 0}, {"mountain", mountain, 0, 0}, {"central", central, 0, 0}, {"eastern", eastern, 0, 0}, {"east coast", eastern, 0, 0},
	{"west coast", pacific, 0, 0},

	{"california", pacific, 37, -119.5}, {"yolo", pacific, 38.5, -122}, {"central valley", pacific, 37, -120}, {"sacramento valley", pacific, 39, -122},
	{"san joaquin valley", pacific, 36.5, -120}, {"butte", pacific, 39.5, -121.5}, {"sutter", pacific, 39, -121.5}, {"tehama", pacific, 40, -122},
	{"tulare", pacific, 36, -119}, {"san joaquin", pacific, 38, -121.5}, {"stanislaus", pacific, 37.5, -121}, {"solano", pacific, 38.5, -122},
	{"oregon", pacific, 44, -120.5}, {"willamette valley", pacific, 45, -123}, {"washington", pacific, 47.5, -120.5}, {"nevada", pacific, 39.5, -117},
	{"idaho", "America/Boise", 43.5, -115}, {"montana", mountain, 47, -109.5}, {"wyoming", mountain, 43, -107.5}, {"utah", mountain, 39.5, -111.5},
	{"colorado", mountain, 39, -105.5}, {"new mexico", mountain, 34.5, -106}, {"arizona", "America/Phoenix", 34.5, -111.5},
	{"north dakota", central, 47.5, -99}, {"south dakota", central, 44.5, -98.5}, {"nebraska", central, 41.5, -98.5}, {"kansas", central, 38.5, -98},
	{"oklahoma", central, 35.5, -97.5}, {"texas", central, 31.5, -98.5}, {"minnesota", central, 46, -94.5}, {"iowa", central, 42, -93.5},
	{"missouri", central, 38.5, -92.5}, {"arkansas", central, 35, -92.5}, {"louisiana", central, 31, -92}, {"wisconsin", central, 44.5, -90},
	{"illinois", central, 40, -89}, {"mississippi", central, 32.5, -89.5}, {"alabama", central, 33, -87}, {"tennessee", central, 36, -86.5},
	{"indiana", "America/Indiana/Indianapolis", 40, -86}, {"kentucky", eastern, 37.5, -84.5}, {"michigan", "America/Detroit", 43.5, -84.5},
	{"ohio", eastern, 40.5, -82.5},
	{"georgia (us)", eastern, 32.5, -83.5}, {"florida", eastern, 28.5, -82}, {"south carolina", eastern, 34, -81}, {"north carolina", eastern, 35.5, -79},
	{"virginia", eastern, 37.5, -78.5}, {"west virginia", eastern, 38.5, -80.5}, {"maryland", eastern, 39, -76.5}, {"delaware", eastern, 39, -75.5},
	{"pennsylvania", eastern, 41, -77.5}, {"new jersey", eastern, 40, -74.5}, {"new york", eastern, 43, -75.5}, {"new york state", eastern, 43, -76.5},
	{"finger lakes", eastern, 42.5, -77}, {"connecticut", eastern, 41.5, -72.5}, {"massachusetts", eastern, 42.5, -72}, {"vermont", eastern, 44, -72.5},
	{"new hampshire", eastern, 43.5, -71.5}, {"maine", eastern, 45.5, -69}, {"rhode island", eastern, 41.5, -71.5}, {"hawaii", "Pacific/Honolulu", 20.5, -157},
	{"alaska", "America/Anchorage", 64, -152},

	{"ontario", "America/Toronto", 44, -79.5}, {"british columbia", "America/Vancouver", 49.5, -120}, {"chihuahua", "America/Chihuahua", 28.5, -106},
	{"isere", "Europe/Paris", 45.5, 5.5}, {"dordogne", "Europe/Paris", 45, 1}, {"perigord", "Europe/Paris", 45, 1}, {"campania", "Europe/Rome", 41, 14.5},
	{"transylvania", "Europe/Bucharest", 46.5, 24}, {"vinnytsia", "Europe/Kyiv", 49, 28.5},
	{"kerman", "Asia/Tehran", 30, 57}, {"hamadan", "Asia/Tehran", 35, 48.5},
	{"yunnan", "Asia/Shanghai", 25, 101.5}, {"shaanxi", "Asia/Shanghai", 35, 109}, {"xinjiang", "Asia/Urumqi", 41, 85}, {"hebei", "Asia/Shanghai", 39, 116},
	{"kashmir", "Asia/Kolkata", 34, 75}, {"jammu", "Asia/Kolkata", 33, 75}, {"arslanbob", "Asia/Bishkek", 41.5, 73}, {"maule", "America/Santiago", -35.5, -71.5},
	{"central chile", "America/Santiago", -34, -71}, {"mendoza", "America/Argentina/Mendoza", -33, -68.5}, {"tasmania", "Australia/Hobart", -42, 147},
	{"victoria", "Australia/Melbourne", -37, 145}, {"new south wales", "Australia/Sydney", -33, 147}, {"canterbury", "Pacific/Auckland", -43.5, 171.5},
	{"marlborough", "Pacific/Auckland", -41.5, 174}, {"western cape", "Africa/Johannesburg", -33.5, 20},
}

// shortNames are countries by names that the table does not give them.
var shortNames = map[string]string{"usa": "US", "america": "US", "england": "GB", "uk": "GB", "great britain": "GB", "kyrgyzstan": "KG", "holland": "NL"}
