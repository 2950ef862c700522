package main

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"

	"rowlight/render"
)

// scaleWords is a scale of colours in words.
type scaleWords struct {
	title     string
	short     string // title where there is little room
	palette   render.Palette
	low, high float64
	marks     []scaleMark // within it, from low to high
}

// scaleMark is a value on a scale and what it is called.
type scaleMark struct {
	value float64
	name  string
}

// temperatures is the scale of fruit temperatures with the limits of the scenario.
func (s *shot) temperatures(scale render.Scale) scaleWords {
	limits := s.day.Scenario.Limits
	words := scaleWords{
		title: "Surface temperature of the fruit [°C]", short: "Fruit [°C]", palette: render.TemperaturePalette(), low: scale.Min_C, high: scale.Max_C,
	}
	for _, limit := range []scaleMark{{limits.Watch_C, "watch"}, {limits.Hot_C, "hot"}, {limits.Burn_C, "burns"}} {
		if limit.value > scale.Min_C && limit.value < scale.Max_C {
			words.marks = append(words.marks, limit)
		}
	}
	return words
}

// sunlight is the scale of sunlight.
func sunlight() scaleWords {
	return scaleWords{
		title: "Sunlight, direct and from the sky [W/m²]", short: "Sunlight [W/m²]", palette: render.LightPalette(), high: render.BrightestLight_Wm2,
		marks: []scaleMark{{render.BrightestLight_Wm2 / 2, ""}},
	}
}

// scale writes a scale of colours into a part of a picture: its title, the colours, and its numbers below them.
func (t *pictureText) scale(picture *image.RGBA, part image.Rectangle, s scaleWords) {
	line := t.line()
	t.left(picture, part.Min.X, part.Min.Y+line*4/5, s.title)
	bar := image.Rect(part.Min.X, part.Min.Y+line*11/10, part.Max.X, part.Min.Y+line*17/10)
	t.colours(picture, bar, s)
}

// colours draws the colours of a scale and its numbers below them. Names that would run into each other are left out.
func (t *pictureText) colours(picture *image.RGBA, bar image.Rectangle, s scaleWords) {
	line := t.line()
	for x := bar.Min.X; x < bar.Max.X; x++ {
		r, g, b := s.palette.At((float64(x-bar.Min.X) + 0.5) / float64(bar.Dx()))
		c := color.RGBA{uint8(r*255 + 0.5), uint8(g*255 + 0.5), uint8(b*255 + 0.5), 255}
		draw.Draw(picture, image.Rect(x, bar.Min.Y, x+1, bar.Max.Y), image.NewUniform(c), image.Point{}, draw.Src)
	}
	under := bar.Max.Y + line*9/10
	low, high := fmt.Sprintf("%g", s.low), fmt.Sprintf("%g", s.high)
	t.left(picture, bar.Min.X, under, low)
	taken, last := bar.Min.X+t.width(low), bar.Max.X-t.width(high)
	t.right(picture, bar.Max.X, under, high)
	for i, mark := range s.marks {
		x := bar.Min.X + int((mark.value-s.low)/(s.high-s.low)*float64(bar.Dx())+0.5)
		draw.Draw(picture, image.Rect(x-1, bar.Min.Y-line/5, x+1, bar.Max.Y+line/8), image.NewUniform(t.ink), image.Point{}, draw.Src)
		end := last
		if i+1 < len(s.marks) {
			end = bar.Min.X + int((s.marks[i+1].value-s.low)/(s.high-s.low)*float64(bar.Dx())) - t.width(fmt.Sprintf("%g", s.marks[i+1].value))
		}
		for _, text := range []string{fmt.Sprintf("%g %s", mark.value, mark.name), fmt.Sprintf("%g", mark.value)} {
			from := x - t.width(fmt.Sprintf("%g", mark.value))/2
			if from > taken+line/4 && from+t.width(text) < end-line/4 {
				t.left(picture, from, under, text)
				taken = from + t.width(text)
				break
			}
		}
	}
}
