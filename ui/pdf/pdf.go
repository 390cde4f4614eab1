// Package pdf turns laid-out pages into a PDF file, with the letters that names
// are written in. It may import core; it knows no screen.
package pdf

import (
	"bytes"
	"fmt"
	"math"

	"codeberg.org/go-pdf/fpdf"

	"barkslip/core/sheet"
)

// family is the name of the letters in a file.
const family = "sheet"

// mostOpen is the pages of a file up to which they are not packed, so that other
// programs can read them as they stand.
const mostOpen = 2

// greys, from 0 black to 255 white.
const (
	black = 0
	faint = 95 // of faint text: it must read on a poor printer
	light = 150
)

// Bytes is the file of a document.
func Bytes(doc sheet.Doc) ([]byte, error) {
	size := fpdf.SizeType{Wd: doc.Size.Wide, Ht: doc.Size.High}
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: size})
	f.SetCompression(len(doc.Pages) > mostOpen)
	f.SetCatalogSort(true)
	f.SetCreationDate(doc.Made)
	f.SetModificationDate(doc.Made)
	f.SetTitle(doc.Title, true)
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.AddUTF8FontFromBytes(family, "", plainLetters)
	f.AddUTF8FontFromBytes(family, "B", boldLetters)
	letters := Letters{}
	for _, page := range doc.Pages {
		f.AddPage()
		for _, s := range page.Shapes {
			shape(f, s)
		}
		for _, l := range page.Lines {
			line(f, l)
		}
		for _, t := range page.Texts {
			text(f, letters, t)
		}
	}
	var out bytes.Buffer
	if err := f.Output(&out); err != nil {
		return nil, fmt.Errorf("the sheet cannot be made: %w", err)
	}
	return out.Bytes(), nil
}

func shape(f *fpdf.Fpdf, s sheet.Shape) {
	points := make([]fpdf.PointType, len(s.Points))
	for i, p := range s.Points {
		points[i] = fpdf.PointType{X: p.X, Y: p.Y}
	}
	style := ""
	if s.Filled {
		grey := int(math.Round(255 * (1 - s.Shade)))
		f.SetFillColor(grey, grey, grey)
		style = "F"
	}
	if s.Thick > 0 {
		f.SetDrawColor(black, black, black)
		f.SetLineWidth(s.Thick)
		style += "D"
	}
	f.Polygon(points, style)
}

func line(f *fpdf.Fpdf, l sheet.Line) {
	grey := black
	if l.Faint {
		grey = light
	}
	f.SetDrawColor(grey, grey, grey)
	f.SetLineWidth(l.Thick)
	if l.Dashed {
		f.SetDashPattern([]float64{1.2, 1.2}, 0)
	}
	f.Line(l.X1, l.Y1, l.X2, l.Y2)
	if l.Dashed {
		f.SetDashPattern(nil, 0)
	}
}

func text(f *fpdf.Fpdf, letters Letters, t sheet.Text) {
	style, grey := "", black
	if t.Bold {
		style = "B"
	}
	if t.Faint {
		grey = faint
	}
	f.SetFont(family, style, t.Points)
	f.SetTextColor(grey, grey, grey)
	x := t.X
	switch wide := letters.Width(t.Words, t.Points, t.Bold); t.Side {
	case sheet.FromRight:
		x -= wide
	case sheet.Middle:
		x -= wide / 2
	}
	if words := drawn(t.Words); words != "" {
		f.Text(x, t.Y, words)
	}
}
