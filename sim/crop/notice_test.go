package crop

import (
	"testing"

	"rowlight/sim/scenario"
)

// No form of the catalogue gets a notice on the vigour of the default site; a weak site gives one to a form that keeps as
// many nodes as on a strong one.
func TestNotices(t *testing.T) {
	s := scenario.Default()
	for _, f := range scenario.Forms() {
		if notices := Notices(Of(s, f.Option, 2), ""); len(notices) != 0 {
			t.Errorf("%s: %v", f.Key, notices)
		}
	}
	s.Crop.Prunings_kg_per_m = 0.4
	f, _ := scenario.FormByKey("quadrilateral")
	notices := Notices(Of(s, f.Option, 2), "/options/1")
	if len(notices) != 1 || notices[0].Code != "notice.nodes" || notices[0].Path != "/options/1/shoots/perMetre" {
		t.Errorf("a quadrilateral cordon on weak vines: %v", notices)
	}
}
