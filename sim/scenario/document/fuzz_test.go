package document_test

import (
	"encoding/json"
	"testing"

	"rowlight/sim/scenario/document"
)

// FuzzParse holds that no text makes Parse panic, and that what passes once passes again as written.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		two, `{"options":[{"trellis":{"wires":[{"role":"catch"},{"role":"fruiting"}]}}],"compare":1e0}`,
		`{"schemaVersion":1,"weather":{"hours":[null]},"options":[[]]}`, `{"site":{"LATITUDE_DEG":1e308}}`, "[", "{\"a\":\"\xff\"}",
		`{"options":[{"form":"sprawl","rows":{"azimuth_deg":180}}],"seed":1e400}`,
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		s, faults := document.Parse(raw)
		document.Notices(raw)
		if len(faults) != 0 {
			return
		}
		written, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		if _, faults := document.Parse(written); len(faults) != 0 {
			t.Errorf("%s passes, and written again it has %v", raw, faults)
		}
	})
}
