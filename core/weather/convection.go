package weather

import "math"

// dryAir are the properties of air at one temperature and the pressure of the
// sea: how easily it flows, how it carries heat, and their ratio.
type dryAir struct {
	kelvin     float64
	viscosity  float64 // kinematic, m2/s
	conduction float64 // W/mK
	prandtl    float64
}

// Air from Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, table
// A.4, remembered; the row of 350 K gives their example 7.4.
var airTable = []dryAir{
	{250, 11.44e-6, 22.3e-3, 0.720},
	{300, 15.89e-6, 26.3e-3, 0.707},
	{350, 20.92e-6, 30.0e-3, 0.700},
	{400, 26.41e-6, 33.8e-3, 0.690},
}

// airOf is air at a temperature in kelvin, straight between the rows of the
// table and past its ends.
func airOf(kelvin float64) dryAir {
	i := 1
	for i < len(airTable)-1 && kelvin > airTable[i].kelvin {
		i++
	}
	a, b := airTable[i-1], airTable[i]
	share := (kelvin - a.kelvin) / (b.kelvin - a.kelvin)
	return dryAir{
		kelvin:     kelvin,
		viscosity:  a.viscosity + share*(b.viscosity-a.viscosity),
		conduction: a.conduction + share*(b.conduction-a.conduction),
		prandtl:    a.prandtl + share*(b.prandtl-a.prandtl),
	}
}

// nusselt is the mean over a cylinder across the wind: Churchill & Bernstein
// 1977, for a Reynolds and a Prandtl number whose product is over 0.2.
func nusselt(reynolds, prandtl float64) float64 {
	flow := 0.62 * math.Sqrt(reynolds) * math.Cbrt(prandtl)
	flow /= math.Sqrt(math.Sqrt(1 + math.Pow(0.4/prandtl, 2.0/3)))
	return 0.3 + flow*math.Pow(1+math.Pow(reynolds/282000, 5.0/8), 4.0/5)
}

// windCooling is the heat carried off by wind of a speed in m/s from a cylinder
// so many metres across, in W/m2K.
func windCooling(wind, across float64, air dryAir) float64 {
	return nusselt(wind*across/air.viscosity, air.prandtl) * air.conduction / across
}

// Still air carries heat off by this much times the cube root of the difference
// in kelvin, in W/m2K; remembered.
const (
	stillUpright = 1.31
	stillTop     = 1.52
)

// cooling joins wind and still air as the cube root of the sum of cubes, in
// W/m2K, for a difference to the air in kelvin.
func cooling(byWind, still, difference float64) float64 {
	return math.Cbrt(byWind*byWind*byWind + still*still*still*math.Abs(difference))
}
