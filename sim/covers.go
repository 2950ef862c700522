package sim

import (
	"math"

	"rowlight/sim/cover"
	"rowlight/sim/heat"
	"rowlight/sim/light"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

// about are the nets that hang about each row of an option, those along the fruit and the bird net.
func about(s scenario.Scenario, o scenario.Option, stand *measured) (nets []cover.Panel) {
	for _, net := range cover.Panels(o, stand.Stand, s.Site.Latitude_deg) {
		if net.Kind != cover.OverheadNet {
			nets = append(nets, net)
		}
	}
	return nets
}

// roof is the net over all rows. Light that the rows send up to it and that it sends back is left out: a white net of
// half shade would add some 3 % to the light of the sky.
type roof struct {
	cloth             cover.Cloth
	direct, scattered float64 // shares of even light that go through between the threads, and on as diffuse light
}

func roofOf(o scenario.Option) roof {
	r := roof{cloth: cover.Of(o.Shade.OverheadShade, o.Shade.OverheadColour)}
	r.direct, r.scattered = r.cloth.Even()
	return r
}

// there tells whether a net hangs over the rows.
func (r *roof) there() bool { return r.cloth.Shade > 0 }

// sky is the light of an instant in the row frame, under the roof.
func (r *roof) sky(at *weather.Instant, rows scenario.Rows) light.Sky {
	return r.under(skyInRow(at, rows))
}

// under is the light that a roof leaves of a sky. Even light comes as even out of it [assumption: low light, which a net
// dims more, is the lesser part].
func (r *roof) under(sky light.Sky) light.Sky {
	if !r.there() {
		return sky
	}
	direct, scattered := r.cloth.Overhead(sky.Sun)
	sky.Diffuse = (r.direct+r.scattered)*sky.Diffuse + scattered*sky.Beam*math.Max(sky.Sun[2], 0)
	sky.Beam *= direct
	return sky
}

// caught is the sunlight that the threads of the roof take in out of an open sky, per area of thread [W/m²].
func (r *roof) caught(open light.Sky) float64 {
	direct, _ := r.cloth.Overhead(open.Sun)
	stopped := (1-direct)*open.Beam*math.Max(open.Sun[2], 0) + (1-r.direct)*open.Diffuse
	return r.cloth.Absorbed * stopped / r.cloth.ThreadArea()
}

// longwave is what comes down under the roof, and the temperature of its threads. Threads see half sky and half what is
// as warm as the air.
func (r *roof) longwave(open light.Sky, sky_Wm2 float64, air heat.Around) (under_Wm2, threads_C float64) {
	if !r.there() {
		return sky_Wm2, air.Air_C
	}
	threads_C = heat.Thread_C(r.caught(open)+(sky_Wm2-heat.Emitted(air.Air_C))/2, air)
	return r.direct*sky_Wm2 + (1-r.direct)*heat.Emitted(threads_C), threads_C
}

// slowed are the shares of the wind that nets leave: under the roof, and at the fruit of either side.
type slowed struct {
	roof float64
	side [2]float64
}

// slowedBy finds what nets leave of the wind. A net on one side leaves the fruit of the other its wind [assumption].
func slowedBy(nets []cover.Panel, r *roof) slowed {
	s := slowed{r.cloth.Wind(), [2]float64{1, 1}}
	for i := range nets {
		if net := &nets[i]; !net.Level() {
			s.side[sideOf(net)] *= net.Cloth.Wind()
		}
	}
	return s
}

// sideOf is the side of the row on which an upright net hangs.
func sideOf(net *cover.Panel) scenario.Side {
	if net.Right() {
		return scenario.Right
	}
	return scenario.Left
}

// threads are the temperatures of the nets on either side, of the closest cloth where there are two; as warm as the
// air where there is none [°C]. Longwave is what comes down on the rows.
func (d *optionDay) threads(k int, longwave_Wm2 float64, fruit *[2]heat.Around) (warm [2]float64) {
	warm = [2]float64{fruit[0].Air_C, fruit[1].Air_C}
	sky, shade := d.day.skies[k], [2]float64{}
	for i := range d.nets {
		net := &d.nets[i]
		side := sideOf(net)
		if net.Level() || net.Cloth.Shade <= shade[side] {
			continue
		}
		shade[side] = net.Cloth.Shade
		// An upright net sees half sky and half floor on its outer side, and leaves on its inner one.
		even, _ := net.Cloth.Even()
		stopped := d.light.BeamOn(net, sky)*(1-net.Direct(sky.Sun)) + (1-even)*(sky.Diffuse+d.floorSends(k))/2
		long := (longwave_Wm2 - heat.Emitted(fruit[side].Air_C)) / 4
		warm[side] = heat.Thread_C(net.Cloth.Absorbed*stopped/net.Cloth.ThreadArea()+long, fruit[side])
	}
	return warm
}

// floorSends is the sunlight that the floor sends back at an instant, mean of its strips [W/m²].
func (d *optionDay) floorSends(k int) float64 {
	sum := 0.0
	for _, leaving := range d.day.scatters[k].strips {
		sum += leaving
	}
	return d.floor.Albedo * sum / float64(d.light.Strips)
}
