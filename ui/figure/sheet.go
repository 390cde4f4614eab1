package figure

import "barkslip/core/unit"

// sheet is a stretch of the world, in millimetres, laid on a canvas at one scale.
type sheet struct {
	origin point
	scale  float64 // dots to the millimetre
}

// margins are cells left free round a sheet.
type margins struct{ left, top, right, bottom int }

// lay lays the stretch between two places in the middle of the canvas, as large
// as its margins allow.
func (c *canvas) lay(from, to point, free margins) sheet {
	wide, high := float64(2*(c.w-free.left-free.right))-2, float64(4*(c.h-free.top-free.bottom))-2
	s := sheet{scale: min(max(wide, 2)/(to.x-from.x), max(high, 2)/(to.y-from.y))}
	s.origin = point{
		float64(2*free.left) + 1 + (wide-(to.x-from.x)*s.scale)/2 - from.x*s.scale,
		float64(4*free.top) + 1 + (high-(to.y-from.y)*s.scale)/2 - from.y*s.scale,
	}
	return s
}

// at is a place of the world on the canvas.
func (s sheet) at(x, y float64) point {
	return point{s.origin.x + x*s.scale, s.origin.y + y*s.scale}
}

// aside writes the first of the texts that is blank at one of the steps from a
// place, and says whether one was.
func (c *canvas) aside(p point, ink Ink, steps [][2]int, texts ...string) bool {
	x, y := cellAt(p)
	for _, s := range texts {
		for _, step := range steps {
			at := x + step[0]
			if step[0] < 0 { // it ends there
				at -= width(s) - 1
			}
			if c.blank(at, y+step[1], width(s)) {
				c.text(at, y+step[1], s, ink)
				return true
			}
		}
	}
	return false
}

// scaleBelow draws the scale on a line, where the canvas has it.
func (c *canvas) scaleBelow(s sheet, y int, sys unit.System) {
	if y < c.h {
		c.scaleBar(1, y, s.scale, float64(c.w)*2/3, sys)
	}
}
