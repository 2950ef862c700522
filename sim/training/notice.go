package training

import (
	"math"

	"rowlight/sim/scenario"
)

// Beyond these a design gets a notice. They are assumptions of this program unless a source is named.
const (
	touchingShare = 0.10 // of the leaf area between two curtains, where they should be apart
	dividedApart  = 0.3  // wires farther apart than this are meant as curtains where shoots are placed [m]
	placedShare   = 0.5  // of shoots positioned or combed down: so many are placed, not left to themselves
	touchingRoom  = 0.30 // width of that room, half way between the wires [m]
	narrowDrive_m = 0.8  // free width between canopies in which nothing can be driven
	overhead_m    = 1.8  // canopies higher than this are walked and driven under
	lowestArms_m  = 0.3  // trunks of goblets are 0.3-0.5 m (Oxford Companion to Wine 2006)
	freeShoot_m   = 1.0  // of shoot above the last wire that holds it: it breaks or falls
	trailing_m    = 0.25 // leaves this near to the ground lie in dust and in the way
)

// Notices says in codes of the text catalogue what a grower would find wrong with the design of an option of which
// this is the stand, measured as m; nothing of it keeps the option from being computed. The path is the JSON pointer of
// the option. Without notices the list is empty, not nil.
func (s *Stand) Notices(o scenario.Option, m Measures, path string) []scenario.Fault {
	notices := []scenario.Fault{}
	add := func(code, field string, values map[string]any) {
		notices = append(notices, scenario.Fault{Code: code, Path: path + field, Values: values})
	}
	if share := s.betweenCurtains(meantApart(o.Shoots)); share > touchingShare {
		add("notice.curtains-touch", "/trellis/wires", map[string]any{"share": share})
	}
	if gap := s.RowSpacing - m.Width_m; gap < narrowDrive_m && m.Bottom_m < overhead_m {
		add("notice.alley", "/rows/rowSpacing_m", map[string]any{"width": m.Width_m, "gap": math.Max(gap, 0), "min": narrowDrive_m})
	}
	lowest, highest := o.ArmHeights()
	if lowest < lowestArms_m {
		add("notice.arms-low", "/trellis/wires", map[string]any{"height": lowest, "min": lowestArms_m})
	}
	if free, wire := freeAbove(o, highest); free > freeShoot_m {
		add("notice.shoots-long", "/shoots/length_m", map[string]any{"free": free, "height": wire})
	}
	if m.Leaves > 0 && m.Bottom_m < trailing_m {
		add("notice.shoots-ground", "/shoots/skirt_m", map[string]any{"bottom": m.Bottom_m})
	}
	return notices
}

// meantApart is how far apart across the row wires carry curtains of their own in the eyes of the grower [m]: where he
// places the shoots, near ones too; a wide canopy whose shoots are left to themselves, as on a quadrilateral cordon, is
// one.
func meantApart(shoots scenario.Shoots) float64 {
	if shoots.CombedDown >= placedShare || shoots.Positioning >= placedShare {
		return dividedApart
	}
	return curtainsApart
}

// betweenCurtains is the largest share of the leaf area that hangs in the middle between two curtains, on wires so far
// apart [m].
func (s *Stand) betweenCurtains(apart float64) float64 {
	total, most := 0.0, 0.0
	for i := range s.Leaves {
		total += s.Leaves[i].Area
	}
	for _, part := range s.curtainsOn(apart) {
		if math.IsInf(part.right, 1) || total == 0 {
			continue
		}
		area := 0.0
		for i := range s.Leaves {
			if math.Abs(s.Leaves[i].Centre.X()-part.right) < touchingRoom/2 {
				area += s.Leaves[i].Area
			}
		}
		most = math.Max(most, area/total)
	}
	return most
}

// freeAbove is the mean length of shoot above the highest catch wires [m], and their height; 0 where there are none
// above the arms.
func freeAbove(o scenario.Option, arms float64) (free, wire float64) {
	for _, w := range o.Trellis.Wires {
		if w.Role == scenario.Catch && w.Height_m > arms {
			wire = math.Max(wire, w.Height_m)
		}
	}
	if wire == 0 {
		return 0, 0
	}
	top := arms + o.Shoots.Length_m
	if o.Shoots.TrimTop_m > 0 {
		top = math.Min(top, o.Shoots.TrimTop_m)
	}
	return top - wire, wire
}
