package document_test

import (
	"testing"

	"rowlight/sim/scenario/document"
)

func TestNumberFieldFollowsTheSchema(t *testing.T) {
	latitude, ok := document.NumberField("/site/latitude_deg")
	if !ok || latitude.Min != -90 || latitude.Max != 90 || latitude.Unit != "deg" || !latitude.HasDefault || latitude.Description == "" {
		t.Errorf("%+v, %v", latitude, ok)
	}
	wire, ok := document.NumberField("/options/0/trellis/wires/3/height_m")
	if !ok || wire.Unit != "m" || wire.Max <= wire.Min {
		t.Errorf("%+v, %v", wire, ok)
	}
	for _, pointer := range []string{"/site/lat", "/site/floor", "/options", "/name/x", ""} {
		if field, ok := document.NumberField(pointer); ok {
			t.Errorf("%q: %+v", pointer, field)
		}
	}
}
