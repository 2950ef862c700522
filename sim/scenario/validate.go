package scenario

import (
	"fmt"
	"math"
	"time"
)

// Rules between fields; each is an assumption of this program unless a source is named.
const (
	// FirstYear and LastYear bound the dates for which the sun's position is tested.
	FirstYear, LastYear = 1900, 2100
	// dewPointMargin_K is how far the dew point of a design day may lie above its lowest air
	// temperature: held constant over the day it overstates the night, when dew falls.
	dewPointMargin_K = 3.0
	// drivingGap_m is the least free width between the wires of neighbouring rows.
	drivingGap_m = 0.5
	// sameHeight_m is the difference in height below which two catch wires make a pair.
	sameHeight_m = 0.01
	// hoursOfDay is the number of measured rows that make a day.
	hoursOfDay = 24
)

// Validate checks the rules between fields that a range of one field cannot express, all of them at
// once. It takes for granted that each field lies in its own range.
func (s Scenario) Validate() []Fault {
	faults := s.Weather.validate()
	faults = append(faults, s.Season.validate()...)
	faults = append(faults, s.Limits.validate()...)
	if s.Compare >= len(s.Options) {
		faults = append(faults, Fault{"fault.compare", "/compare", map[string]any{
			"value": s.Compare, "options": len(s.Options)}})
	}
	for i, option := range s.Options {
		faults = append(faults, option.validate(fmt.Sprintf("/options/%d", i))...)
	}
	return faults
}

// validate checks the date, the extremes of a design day and the number of measured hours.
func (w Weather) validate() []Fault {
	var faults []Fault
	if date, err := time.Parse(time.DateOnly, w.Date); err != nil {
		faults = append(faults, Fault{"fault.date", "/weather/date", map[string]any{"value": w.Date}})
	} else if year := date.Year(); year < FirstYear || year > LastYear {
		faults = append(faults, Fault{"fault.year", "/weather/date", map[string]any{
			"value": w.Date, "min": FirstYear, "max": LastYear}})
	}
	if len(w.Hours) != 0 {
		if len(w.Hours) != hoursOfDay {
			faults = append(faults, Fault{"fault.hours", "/weather/hours", map[string]any{
				"count": len(w.Hours), "want": hoursOfDay}})
		}
		return faults
	}
	if w.AirMin_C >= w.AirMax_C {
		faults = append(faults, Fault{"fault.air-order", "/weather/airMin_C", map[string]any{
			"airMin": w.AirMin_C, "airMax": w.AirMax_C}})
	}
	if w.DewPoint_C > w.AirMin_C+dewPointMargin_K {
		faults = append(faults, Fault{"fault.dew-point", "/weather/dewPoint_C", map[string]any{
			"dewPoint": w.DewPoint_C, "airMin": w.AirMin_C, "margin": dewPointMargin_K}})
	}
	return faults
}

// validate checks that the three counted temperatures rise.
func (l Limits) validate() []Fault {
	if l.Watch_C < l.Hot_C && l.Hot_C < l.Burn_C {
		return nil
	}
	return []Fault{{"fault.limits-order", "/limits", map[string]any{
		"watch": l.Watch_C, "hot": l.Hot_C, "burn": l.Burn_C}}}
}

// validate checks one option, whose pointer is path.
func (o Option) validate(path string) []Fault {
	if _, known := FormByKey(o.Form); !known { // and so are the sizes that the option leaves to it
		return []Fault{{"fault.form", path + "/form", map[string]any{
			"value": o.Form, "allowed": FormKeys()}}}
	}
	faults := o.validateFruitingWires(path)
	faults = append(faults, o.validateCanes(path)...)
	faults = append(faults, o.Leaves.validate(path+"/leaves")...)
	faults = append(faults, o.validateShade(path+"/shade")...)
	faults = append(faults, o.Trellis.validateCatchWires(path+"/trellis/wires")...)
	if need := o.Trellis.width() + drivingGap_m; o.Rows.RowSpacing_m < need {
		faults = append(faults, Fault{"fault.rows-narrow", path + "/rows/rowSpacing_m", map[string]any{
			"value": o.Rows.RowSpacing_m, "width": o.Trellis.width(), "min": need, "unit": "m"}})
	}
	return faults
}

// validateFruitingWires checks that arms have wires, wires have arms and hedging and skirting leave the arms alone.
func (o Option) validateFruitingWires(path string) []Fault {
	count := o.Trellis.count(Fruiting)
	if count == 0 && o.Training.ArmLayout != ArmsSpread {
		return []Fault{{"fault.no-fruiting-wire", path + "/trellis/wires", nil}}
	}
	var faults []Fault
	if o.Training.ArmsPerVine < count {
		faults = append(faults, Fault{"fault.arms", path + "/training/armsPerVine", map[string]any{
			"value": o.Training.ArmsPerVine, "wires": count}})
	}
	lowest, highest := o.ArmHeights()
	if trim := o.Shoots.TrimTop_m; trim > 0 && trim <= highest {
		faults = append(faults, Fault{"fault.trim-low", path + "/shoots/trimTop_m", map[string]any{
			"value": trim, "height": highest, "unit": "m"}})
	}
	if skirt := o.Shoots.Skirt_m; skirt >= lowest {
		faults = append(faults, Fault{"fault.skirt-high", path + "/shoots/skirt_m", map[string]any{
			"value": skirt, "height": lowest, "unit": "m"}})
	}
	return faults
}

// ArmHeights are the heights of the lowest and the highest arms [m]: of the fruiting wires, or of the head where
// there are none.
func (o Option) ArmHeights() (lowest, highest float64) {
	if o.Trellis.count(Fruiting) == 0 {
		return o.Training.HeadHeight_m, o.Training.HeadHeight_m
	}
	lowest = math.Inf(1)
	for _, wire := range o.Trellis.Wires {
		if wire.Role == Fruiting {
			lowest, highest = math.Min(lowest, wire.Height_m), math.Max(highest, wire.Height_m)
		}
	}
	return lowest, highest
}

// validateCanes checks that canes which are tied have a wire below their arms to be tied to.
func (o Option) validateCanes(path string) []Fault {
	t := o.Training
	if t.Wood != Canes || t.CaneLayout != CanesArched && t.CaneLayout != CanesTiedDown {
		return nil
	}
	lowest, _ := o.ArmHeights()
	for _, wire := range o.Trellis.Wires {
		if wire.Role == Tie && wire.Height_m < lowest {
			return nil
		}
	}
	return []Fault{{"fault.no-tie-wire", path + "/trellis/wires", map[string]any{"height": lowest, "unit": "m"}}}
}

// validate checks that the band in which leaves are pulled is one, and their date, where there is one.
func (l Leaves) validate(path string) []Fault {
	var faults []Fault
	if _, err := time.Parse(time.DateOnly, l.RemovedOn); err != nil && l.RemovedOn != "" {
		faults = append(faults, Fault{"fault.date", path + "/removedOn", map[string]any{"value": l.RemovedOn}})
	}
	if l.RemovedTo_m != 0 && l.RemovedFrom_m >= l.RemovedTo_m {
		faults = append(faults, Fault{"fault.pulled-band", path + "/removedFrom_m", map[string]any{
			"value": l.RemovedFrom_m, "to": l.RemovedTo_m, "unit": "m"}})
	}
	return faults
}

// validateShade checks that the band of a net is one, that a net over all rows hangs over the wires and that misters
// start before they stop. What is not used is not checked.
func (o Option) validateShade(path string) []Fault {
	var faults []Fault
	shade, highest := o.Shade, 0.0
	if shade.NetSides != NoSide && shade.NetTo_m > 0 && shade.NetFrom_m >= shade.NetTo_m {
		faults = append(faults, Fault{"fault.net-band", path + "/netFrom_m", map[string]any{
			"value": shade.NetFrom_m, "to": shade.NetTo_m, "unit": "m"}})
	}
	for _, wire := range o.Trellis.Wires {
		highest = math.Max(highest, wire.Height_m)
	}
	if shade.OverheadShade > 0 && shade.OverheadHeight_m <= highest {
		faults = append(faults, Fault{"fault.overhead-low", path + "/overheadHeight_m", map[string]any{
			"value": shade.OverheadHeight_m, "height": highest, "unit": "m"}})
	}
	if shade.MistRate_mmh > 0 && shade.MistFrom_h >= shade.MistTo_h {
		faults = append(faults, Fault{"fault.mist-hours", path + "/mistFrom_h", map[string]any{
			"value": shade.MistFrom_h, "to": shade.MistTo_h}})
	}
	return faults
}

// validateCatchWires checks that catch wires come in pairs: at each height an even number, no two of
// them in one place. A fault points at the first wire of its height.
func (t Trellis) validateCatchWires(path string) []Fault {
	var faults []Fault
	counted := make([]bool, len(t.Wires))
	for i, first := range t.Wires {
		if first.Role != Catch || counted[i] {
			continue
		}
		offsets := map[float64]bool{}
		count := 0
		for j, wire := range t.Wires {
			if wire.Role == Catch && math.Abs(wire.Height_m-first.Height_m) <= sameHeight_m {
				counted[j], offsets[wire.Offset_m] = true, true
				count++
			}
		}
		if count%2 != 0 || len(offsets) != count {
			faults = append(faults, Fault{"fault.catch-pair", fmt.Sprintf("%s/%d", path, i), map[string]any{
				"height": first.Height_m, "count": count, "unit": "m"}})
		}
	}
	return faults
}

// width is the distance across the row between the outermost wires [m]; one drives below a roof.
func (t Trellis) width() float64 {
	left, right := math.Inf(1), math.Inf(-1)
	for _, wire := range t.Wires {
		if wire.Role != Roof {
			left, right = math.Min(left, wire.Offset_m), math.Max(right, wire.Offset_m)
		}
	}
	width := right - left
	if out := t.AfternoonOut_m; t.AfternoonWire_m > 0 { // on either side, by how the rows run: the wider way counts
		width = math.Max(right-math.Min(left, -out), math.Max(right, out)-left)
	}
	return math.Max(width, 0)
}

// count is the number of wires of a role.
func (t Trellis) count(role WireRole) int {
	count := 0
	for _, wire := range t.Wires {
		if wire.Role == role {
			count++
		}
	}
	return count
}
