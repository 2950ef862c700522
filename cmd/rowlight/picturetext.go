package main

import (
	"image"
	"image/color"
	"strings"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
)

// pictureText writes on pictures.
type pictureText struct {
	face       font.Face
	paper, ink color.RGBA
	size       float64 // [px]
}

// Sizes of writing [px].
const (
	writingShare  = 1.0 / 36 // of the height of a picture
	leastWriting  = 11.0
	mostWriting   = 26.0
	writingDPI    = 72 // so that points are pixels
	labelDistance = 2
)

// newPictureText makes writing that suits a picture.
func newPictureText(height int, dark bool) *pictureText {
	t := &pictureText{
		paper: color.RGBA{0xfb, 0xfb, 0xf8, 0xff}, ink: color.RGBA{0x1c, 0x22, 0x1a, 0xff},
		size: min(max(float64(height)*writingShare, leastWriting), mostWriting),
	}
	if dark {
		t.paper, t.ink = color.RGBA{0x12, 0x14, 0x12, 0xff}, color.RGBA{0xe4, 0xe8, 0xde, 0xff}
	}
	parsed, err := opentype.Parse(goregular.TTF)
	if err == nil {
		t.face, err = opentype.NewFace(parsed, &opentype.FaceOptions{Size: t.size, DPI: writingDPI, Hinting: font.HintingFull})
	}
	if err != nil {
		panic(err) // the font is part of the program
	}
	return t
}

// line is the height of a line [px].
func (t *pictureText) line() int { return int(1.35*t.size + 0.5) }

func (t *pictureText) write(to *image.RGBA, x, y int, text string, ink color.Color) {
	d := font.Drawer{Dst: to, Src: image.NewUniform(ink), Face: t.face, Dot: fixed.P(x, y)}
	d.DrawString(text)
}

func (t *pictureText) width(text string) int { return font.MeasureString(t.face, text).Ceil() }

func (t *pictureText) left(to *image.RGBA, x, y int, text string) { t.write(to, x, y, text, t.ink) }

func (t *pictureText) right(to *image.RGBA, x, y int, text string) {
	t.write(to, x-t.width(text), y, text, t.ink)
}

func (t *pictureText) centred(to *image.RGBA, x, y int, text string) {
	t.write(to, x-t.width(text)/2, y, text, t.ink)
}

// bold writes twice, a pixel apart.
func (t *pictureText) bold(to *image.RGBA, x, y int, text string) {
	t.left(to, x, y, text)
	t.left(to, x+1, y, text)
}

// fitting is as many whole words of a text as fit into a width.
func (t *pictureText) fitting(width int, text string) string {
	for t.width(text) > width {
		cut := strings.LastIndexByte(text, ' ')
		if cut < 0 {
			break
		}
		text = text[:cut]
	}
	return text
}

// label writes in the middle of a place with a seam of paper around, so that it is read on any ground.
func (t *pictureText) label(to *image.RGBA, x, y float32, text string) {
	left, base := int(x)-t.width(text)/2, int(float64(y)+0.36*t.size)
	for dy := -labelDistance; dy <= labelDistance; dy++ {
		for dx := -labelDistance; dx <= labelDistance; dx++ {
			if dx*dx+dy*dy <= labelDistance*labelDistance+1 {
				t.write(to, left+dx, base+dy, text, t.paper)
			}
		}
	}
	t.write(to, left, base, text, t.ink)
}
