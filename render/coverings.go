package render

import (
	"image"
	"math"

	"rowlight/sim/cover"
	"rowlight/sim/scenario"
)

// nets are those about a row, and one period of the net over all rows.
func (p *Planting) nets() []cover.Panel {
	option := scenario.Option{Rows: scenario.Rows{Azimuth_deg: p.RowAzimuth_deg}, Shade: p.Shade}
	return cover.Panels(option, p.Stand, p.Latitude_deg)
}

// film is what a particle film adds to the share of light that the upper faces of leaves send back.
func (p *Planting) film() float32 {
	visible, _ := cover.Leaves(p.Shade.Film)
	return float32(visible)
}

// dustPerFilm is how closed the specks on a bunch are drawn for what the film adds to leaves, set by eye.
const dustPerFilm = 8.0

// dust draws the specks of a particle film over a bunch; between them its colour is that of its temperature.
func (e *emitter) dust(it *item, v *visibleSlice) {
	body := &e.scene.bunches.bunch[it.index]
	toEye := e.view.Eye.Sub(v.at(body.centre)).Normalize()
	face := 2 * it.index
	if toEye[0] > 0 {
		face++
	}
	light := e.scene.light.sky.scaled(0.9)
	if e.scene.faceLit[face] {
		light = light.plus(e.scene.light.beam.scaled(0.5))
	}
	q := e.sprite(v.at(body.centre).Sub(e.view.Eye), body.length/2, 0, 1, dustTile)
	if q == nil {
		return
	}
	colour := e.shaded(e.scene.tone.colour(light), v.haze)
	middle, wide := (q[0].X+q[1].X)/2, 2*body.radius/body.length
	for k := range q {
		q[k].X = middle + (q[k].X-middle)*wide
		q[k].R, q[k].G, q[k].B = colour[0]*atlasGain, colour[1]*atlasGain, colour[2]*atlasGain
		q[k].A = min(dustPerFilm*e.scene.planting.film(), 0.7) * v.fade
	}
}

// Threads and meshes across the texture of a net.
const (
	weaveThreads = 26
	netMeshes    = 20
)

// drawWeave is cloth: threads that cross, with thinner places between them. Its mean cover is weaveCover.
func drawWeave(side int) *image.RGBA {
	picture := image.NewRGBA(image.Rect(0, 0, side, side))
	for j := range side {
		for i := range side {
			across := math.Sin(2 * math.Pi * weaveThreads * (float64(i) + 0.5) / float64(side))
			along := math.Sin(2 * math.Pi * weaveThreads * (float64(j) + 0.5) / float64(side))
			high := max(across, along)
			put(picture, i, j, evenTexel*(0.92+0.08*high), weaveCover+0.2*(0.7*high+0.3*min(across, along)-0.2))
		}
	}
	return picture
}

// drawMesh is a bird net: thin threads around open meshes. Its mean cover is meshCover.
func drawMesh(side int) *image.RGBA {
	picture := image.NewRGBA(image.Rect(0, 0, side, side))
	const thread = 0.17 // of the width of a mesh
	for j := range side {
		for i := range side {
			u, v := netMeshes*(float64(i)+0.5)/float64(side), netMeshes*(float64(j)+0.5)/float64(side)
			// Meshes hang on their corners.
			a, b := u+v, u-v
			off := min(math.Abs(a-math.Round(a)), math.Abs(b-math.Round(b)))
			put(picture, i, j, evenTexel, 1-smooth(thread/2, thread, off))
		}
	}
	return picture
}

// drawDust is what a particle film leaves on a bunch: white specks in its outline, thinner downwards.
func drawDust(side int) *image.RGBA {
	picture := image.NewRGBA(image.Rect(0, 0, side, side))
	for j := range side {
		share := (float64(j) + 0.5) / float64(side)
		for i := range side {
			x := 2*(float64(i)+0.5)/float64(side) - 1
			inside := smooth(0, 0.12, bunchWidth(share)-math.Abs(x))
			specks := latticeNoise(float64(i)/2.2, float64(j)/2.2, 64, 64, 52)
			put(picture, i, j, 0.9, inside*smooth(0.55, 0.8, specks)*(1-0.45*share))
		}
	}
	return picture
}
