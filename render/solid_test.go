package render

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// solidsOf are the solids of a form in north-south rows, by name.
func solidsOf(t *testing.T, form string, azimuth_deg float64) (*training.Stand, map[string]Solid) {
	t.Helper()
	f, ok := scenario.FormByKey(form)
	if !ok {
		t.Fatal(form)
	}
	stand, err := training.Build(f.Option, 36.4, 1)
	if err != nil {
		t.Fatal(err)
	}
	named := map[string]Solid{}
	for _, s := range Solids(Planting{Stand: stand, RowAzimuth_deg: azimuth_deg}) {
		named[s.Name] = s
	}
	return stand, named
}

// corner is a position in double precision.
func corner(s Solid, i uint32) mgl64.Vec3 {
	p := s.Positions[i]
	return mgl64.Vec3{float64(p[0]), float64(p[1]), float64(p[2])}
}

// A blade has the area, the centroid and the normal of the leaf of which it is made.
func TestSolidLeavesAreThoseOfTheStand(t *testing.T) {
	stand, solids := solidsOf(t, "sprawl", 0)
	leaves := solids["leaves"]
	each := len(leaves.Triangles) / len(stand.Leaves)
	for i, leaf := range stand.Leaves {
		var area float64
		var middle, normal mgl64.Vec3
		for _, triangle := range leaves.Triangles[i*each : (i+1)*each] {
			a, b, c := corner(leaves, triangle[0]), corner(leaves, triangle[1]), corner(leaves, triangle[2])
			cross := b.Sub(a).Cross(c.Sub(a)).Mul(0.5)
			area += cross.Len()
			normal = normal.Add(cross)
			middle = middle.Add(a.Add(b).Add(c).Mul(cross.Len() / 3))
		}
		wantMiddle := mgl64.Vec3{leaf.Centre[0], leaf.Centre[2], -leaf.Centre[1]}
		wantNormal := mgl64.Vec3{leaf.Normal[0], leaf.Normal[2], -leaf.Normal[1]}
		if math.Abs(area/leaf.Area-1) > 1e-4 || middle.Mul(1/area).Sub(wantMiddle).Len() > 1e-5 || normal.Normalize().Dot(wantNormal) < 1-1e-6 {
			t.Fatalf("leaf %d: area %g at %v facing %v, want %g at %v facing %v", i, area, middle.Mul(1/area), normal.Normalize(), leaf.Area, wantMiddle, wantNormal)
		}
	}
}

// Round bodies are closed and turn their triangles outwards: by the divergence theorem their signed volume is
// near that of the rods and balls that they stand for, less what the flat sides cut off.
func TestSolidWoodAndBerriesFaceOutwards(t *testing.T) {
	stand, solids := solidsOf(t, "sprawl", 30)
	var wood float64 // of truncated cones
	for _, limb := range stand.Trunks {
		for i := 1; i < len(limb.Points); i++ {
			a, b := limb.Radius[i-1], limb.Radius[i]
			wood += math.Pi / 3 * (a*a + a*b + b*b) * limb.Points[i].Sub(limb.Points[i-1]).Len()
		}
	}
	sides := float64(tubeSides) / (2 * math.Pi) * math.Sin(2*math.Pi/tubeSides) // regular polygon over its circle
	if got := signedVolume(solids["trunks"]) / (wood * sides); math.Abs(got-1) > 0.05 {
		t.Errorf("trunks have %.3f of their volume", got)
	}
	bunches := solids["bunches"]
	var balls float64
	for i := 0; i < len(bunches.Positions); i += len(ballCorners) {
		edge := corner(bunches, uint32(i)).Sub(corner(bunches, uint32(i+1))).Len()
		balls += 5.0 / 12 * (3 + math.Sqrt(5)) * edge * edge * edge // volume of an icosahedron
	}
	if got := signedVolume(bunches) / balls; math.Abs(got-1) > 0.01 {
		t.Errorf("berries have %.3f of their volume", got)
	}
}

func signedVolume(s Solid) float64 {
	var volume float64
	for _, t := range s.Triangles {
		volume += corner(s, t[0]).Dot(corner(s, t[1]).Cross(corner(s, t[2]))) / 6
	}
	return volume
}

// Rows run to their compass direction: wires of east-west rows reach to the east.
func TestSolidsFollowTheCompass(t *testing.T) {
	stand, solids := solidsOf(t, "vsp-spurs", 90)
	var east, south float64
	for _, p := range solids["wires"].Positions {
		east, south = max(east, float64(p[0])), max(south, math.Abs(float64(p[2])))
	}
	if math.Abs(east-stand.Length) > 0.01 || south > 0.5 {
		t.Errorf("wires reach %.2f m east and %.2f m south of their start, want %.2f and the width of the trellis", east, south, stand.Length)
	}
}
