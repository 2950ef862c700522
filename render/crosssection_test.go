package render

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"testing"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// sectionOf is the cross-section of one form.
func sectionOf(t testing.TB, form scenario.Form) CrossSection {
	t.Helper()
	stand, err := training.Build(form.Option, 36.4, 1)
	if err != nil {
		t.Fatal(err)
	}
	return CrossSection{Key: form.Key, Title: form.Name, Note: "Invented & drawn", Stand: stand}
}

// elements counts the elements of an XML text by their class, or by their name without one.
func elements(t testing.TB, text []byte) map[string]int {
	t.Helper()
	count := map[string]int{}
	for decoder := xml.NewDecoder(bytes.NewReader(text)); ; {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return count
		}
		if err != nil {
			t.Fatal(err)
		}
		if start, ok := token.(xml.StartElement); ok {
			name := start.Name.Local
			for _, attribute := range start.Attr {
				if attribute.Name.Local == "class" {
					name = attribute.Value
				}
			}
			count[name]++
		}
	}
}

// Every form draws its wires, its fruit zones and the height of each wire, as well-formed XML without a place that is
// no number.
func TestCrossSectionShowsWiresAndHeights(t *testing.T) {
	for _, form := range scenario.Forms() {
		section := sectionOf(t, form)
		var text bytes.Buffer
		if err := section.WriteSVG(&text, Unsaid); err != nil {
			t.Fatal(err)
		}
		count := elements(t, text.Bytes())
		wires := 0
		for name, n := range count {
			if strings.HasPrefix(name, "wire ") {
				wires += n
			}
		}
		if wires != len(section.Stand.Wires) || count["fruit-zone"] != len(section.Stand.FruitZones()) || count["leaves"] == 0 || count["bunches"] == 0 {
			t.Errorf("%s draws %v", form.Key, count)
		}
		for _, wire := range section.Stand.Wires {
			if wire.Role == string(scenario.Roof) {
				continue // only the highest and the lowest are labelled
			}
			if !strings.Contains(text.String(), fmt.Sprintf("%.2f m", wire.Z)) {
				t.Errorf("%s has no label for the wire at %.2f m", form.Key, wire.Z)
			}
		}
		if strings.Contains(text.String(), "NaN") || strings.Contains(text.String(), "Inf") {
			t.Errorf("%s is drawn at places that are no numbers", form.Key)
		}
	}
}

func TestSheetHoldsEverySection(t *testing.T) {
	forms := scenario.Forms()[:5]
	var sections []CrossSection
	for _, form := range forms {
		sections = append(sections, sectionOf(t, form))
	}
	var text bytes.Buffer
	if err := WriteSheet(&text, Unsaid, "Forms <end-on>", sections, 2); err != nil {
		t.Fatal(err)
	}
	count := elements(t, text.Bytes())
	if count["title"] != 2*len(forms) || count["clipPath"] != len(forms) || count["legend"] != 5 {
		t.Errorf("the sheet holds %v", count)
	}
}

// Labels that would meet move apart, as little as can be; those with room stay.
func TestLabelsMoveApart(t *testing.T) {
	at := func(heights ...float64) []float64 {
		labels := make([]sectionLabel, len(heights))
		for i, h := range heights {
			labels[i].height = h
		}
		return placesApart(labels)
	}
	if got := at(2, 1, 0.5); !slices.Equal(got, []float64{-200, -100, -50}) {
		t.Errorf("labels with room moved to %v", got)
	}
	got := at(1.05, 1.0, 0.95, 0.5)
	for i := range got[1:] {
		if got[i+1]-got[i] < labelApart-1e-9 {
			t.Errorf("labels meet at %v", got)
		}
	}
	if math.Abs((got[0]+got[1]+got[2])/3+100) > 1e-9 || got[3] != -50 {
		t.Errorf("labels moved more than they need: %v", got)
	}
}

// The outline of a leaf keeps about the area of its blade.
func TestBladeOutlineKeepsTheArea(t *testing.T) {
	twice := 0.0
	for i, p := range bladePoints {
		q := bladePoints[(i+1)%len(bladePoints)]
		twice += p[0]*q[1] - p[1]*q[0]
	}
	if area := math.Abs(twice) / 2; math.Abs(area/math.Pi-1) > 0.15 {
		t.Errorf("the outline holds %.2f of the area of its blade", area/math.Pi)
	}
}

// In feet the drawing names the same heights: a fruiting wire at 0.9144 m is 3.0 ft high, and no metre is left.
func TestCrossSectionInFeet(t *testing.T) {
	form, _ := scenario.FormByKey("lyre")
	for i := range form.Option.Trellis.Wires {
		if wire := &form.Option.Trellis.Wires[i]; wire.Role == scenario.Fruiting {
			wire.Height_m = 0.9144
		}
	}
	section := sectionOf(t, form)
	section.Feet = true
	var text bytes.Buffer
	if err := section.WriteSVG(&text, Unsaid); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"wires 3.0 ft fruiting 2<", "wires 5.9 ft catch 4<", "spacing 11.8", ">length 3 ft<"} {
		if !strings.Contains(text.String(), want) {
			t.Errorf("the drawing in feet lacks %q", want)
		}
	}
	if strings.Contains(text.String(), " m ") || strings.Contains(text.String(), " m<") {
		t.Error("the drawing in feet still speaks of metres")
	}
}
