package render

import "strings"

// A saying is what words in a drawing mean, so that each program writes them in its own language: a code and what it is
// about, apart by spaces. Lengths are figures in the units of the drawing; N is a whole number, COMPASS a word of
// scenario.Compass, ROLE a scenario.WireRole, NET is shade, bird or overhead.
//
//	wires HEIGHT UNIT ROLE N ROLE N …   wires at a height, how many of each role
//	fruit LOW HIGH UNIT                 a fruit zone
//	spacing ROWS VINES UNIT             how far apart rows and vines are
//	length FIGURE [UNIT]                a height or a length
//	sign ROLE                           what the sign of a wire means; that of foliage wires is that of catch wires too
//	marks                               what the rest of a sheet of cross-sections means
//	side COMPASS                        a side of the row, in a slice
//	row COMPASS                         the side of the row that one sees
//	looking COMPASS                     where one looks along the row
//	net NET                             what a net is for
//	point N|E|S|W                       a direction of an outlook
//	hour N                              an hour of the sun's course
const (
	sayWires   = "wires"
	sayFruit   = "fruit"
	saySpacing = "spacing"
	sayLength  = "length"
	saySign    = "sign"
	sayMarks   = "marks"
	saySide    = "side"
	sayRow     = "row"
	sayLooking = "looking"
	sayNet     = "net"
	sayPoint   = "point"
	sayHour    = "hour"
)

// Say turns a saying into words.
type Say func(saying string) string

// Unsaid leaves sayings as they are, for who reads them from the drawing.
func Unsaid(saying string) string { return saying }

func saying(code string, about ...string) string {
	return strings.TrimRight(code+" "+strings.Join(about, " "), " ")
}
