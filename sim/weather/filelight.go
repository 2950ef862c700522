package weather

import (
	"math"

	"rowlight/sim/sky"
	"rowlight/sim/sun"
)

// light is the mean light of the hour that ends at a row, all three parts of it.
func (d *fileDay) light(index int) sky.Irradiance {
	row := d.file.Rows[index]
	over := d.sunOver(row, -60, 0)
	if d.file.Times.Declared {
		return d.movedLight(index, over)
	}
	return d.complete(row, over)
}

// sunlit is the sun over a stretch of time.
type sunlit struct {
	share                float64 // of the stretch with the sun up [0–1]
	sine                 float64 // mean sine of the elevation while it is up
	extraterrestrial_Wm2 float64
}

// sunOver looks at the sun from one offset to another from the stamp of a row.
func (d *fileDay) sunOver(row Row, from_min, to_min float64) sunlit {
	s := sunlit{extraterrestrial_Wm2: sun.ExtraterrestrialNormal(row.date().YearDay())}
	for step := range stepsOfHour {
		offset_min := from_min + (to_min-from_min)*(float64(step)+0.5)/stepsOfHour
		s.add(math.Sin(d.file.sunAt(row, offset_min).Elevation_deg * math.Pi / 180))
	}
	s.end()
	return s
}

// add counts one of the steps of a stretch, by the sine of the elevation.
func (s *sunlit) add(sine float64) {
	if sine > 0 {
		s.share += 1.0 / stepsOfHour
		s.sine += sine / stepsOfHour
	}
}

// end makes the mean of the steps with the sun up.
func (s *sunlit) end() {
	if s.share > 0 {
		s.sine /= s.share
	}
}

// complete finds the parts of the light that a row lacks. By night missing light is none.
func (d *fileDay) complete(row Row, over sunlit) sky.Irradiance {
	light := sky.Irradiance{GHI: row.GHI, DNI: row.DNI, DHI: row.DHI}
	noGlobal, noBeam, noDiffuse := math.IsNaN(row.GHI), math.IsNaN(row.DNI), math.IsNaN(row.DHI)
	switch {
	case !noGlobal && !noBeam && !noDiffuse:
		return light
	case over.share == 0:
		return sky.Irradiance{}
	case noGlobal && (noBeam || noDiffuse):
		d.faults.block(row.Line, 0, "fault.day-missing", map[string]any{"what": "light", "hour": row.Hour})
		return sky.Irradiance{}
	case noBeam && noDiffuse:
		d.filled["notice.day-split"]++
		return splitHour(row.GHI, over)
	}
	// The beam on the horizontal is its mean times the mean sine while the sun is up.
	d.filled["notice.day-closed"]++
	switch {
	case noBeam:
		light.DNI = over.beam(row.GHI - row.DHI)
	case noDiffuse:
		light.DHI = math.Max(row.GHI-row.DNI*over.sine, 0)
	default:
		light.GHI = row.DHI + row.DNI*over.sine
	}
	return light
}

// splitHour splits the mean global light of an hour by Erbs et al. 1982, over the part of the hour
// that has the sun up.
func splitHour(global float64, over sunlit) sky.Irradiance {
	zenith := math.Acos(over.sine) * 180 / math.Pi
	up := sky.Erbs(global/over.share, zenith, over.extraterrestrial_Wm2)
	dni := math.Min(up.DNI, over.extraterrestrial_Wm2) * over.share
	return sky.Irradiance{GHI: global, DNI: dni, DHI: global - dni*over.sine}
}

// beam is the mean direct normal light that makes a mean beam on the horizontal, at most what comes
// from outside the atmosphere.
func (s sunlit) beam(horizontal float64) float64 {
	return math.Min(math.Max(horizontal, 0)/s.sine, s.share*s.extraterrestrial_Wm2)
}

// movedLight makes the mean of an hour from light that the file gives for moments: straight between
// them while the sun is up.
func (d *fileDay) movedLight(index int, over sunlit) sky.Irradiance {
	mean := sky.Irradiance{}
	if over.share == 0 {
		return mean
	}
	offset := d.file.lightOffset_min() / 60
	for step := range stepsOfHour {
		hour := (float64(step)+0.5)/stepsOfHour - 1 // from the stamp [h]
		if d.file.sunAt(d.file.Rows[index], hour*60).Elevation_deg <= 0 {
			continue
		}
		before := math.Floor(hour - offset)
		share := hour - offset - before
		a, b := d.moment(index+int(before)), d.moment(index+int(before)+1)
		mean.GHI += mix(a.GHI, b.GHI, share) / stepsOfHour
		mean.DNI += mix(a.DNI, b.DNI, share) / stepsOfHour
		mean.DHI += mix(a.DHI, b.DHI, share) / stepsOfHour
	}
	return mean
}

// moment is the light that a row gives for one moment; beyond the ends of the file it is that of the
// end. It is made once, so that what is filled counts once.
func (d *fileDay) moment(index int) sky.Irradiance {
	index = min(max(index, 0), len(d.file.Rows)-1)
	light, ok := d.moments[index]
	if !ok {
		row, offset_min := d.file.Rows[index], d.file.lightOffset_min()
		light = d.complete(row, d.sunOver(row, offset_min, offset_min))
		d.moments[index] = light
	}
	return light
}
