package main

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"github.com/qmuntal/gltf"
	"github.com/qmuntal/gltf/modeler"

	"rowlight/sim"
	"rowlight/sim/training"
)

// demoStand is the stand of the second option of the demo.
func demoStand(t *testing.T) *training.Stand {
	t.Helper()
	stand, err := sim.NewEngine().Stand(demoDay().Scenario, 1)
	if err != nil {
		t.Fatal(err)
	}
	return stand
}

// exported is what rowlight export writes of the second option.
func exported(t *testing.T, format string) string {
	t.Helper()
	got := rowlight("", "export", demo, "--option", "b", "--format", format)
	if got.code != 0 {
		t.Fatal(got.stderr)
	}
	return got.stdout
}

func leafAreaOf(stand *training.Stand) float64 {
	var area float64
	for _, leaf := range stand.Leaves {
		area += leaf.Area
	}
	return area
}

// Both kinds of glTF read back as the same vines: every part by name, with the leaf area of the stand.
func TestExportedGLTFReadsBack(t *testing.T) {
	stand := demoStand(t)
	for _, format := range []string{"gltf", "glb"} {
		var doc gltf.Document
		if err := gltf.NewDecoder(strings.NewReader(exported(t, format))).Decode(&doc); err != nil {
			t.Fatal(format, err)
		}
		names := map[string]int{}
		for _, node := range doc.Nodes {
			names[node.Name] = *node.Mesh
		}
		for _, want := range []string{"leaves", "bunches", "shoots", "arms", "trunks", "posts", "wires"} {
			if _, ok := names[want]; !ok {
				t.Errorf("%s: no node %s", format, want)
			}
		}
		leaves := doc.Meshes[names["leaves"]].Primitives[0]
		at, err := modeler.ReadPosition(&doc, doc.Accessors[leaves.Attributes[gltf.POSITION]], nil)
		if err != nil {
			t.Fatal(format, err)
		}
		indices, err := modeler.ReadIndices(&doc, doc.Accessors[*leaves.Indices], nil)
		if err != nil {
			t.Fatal(format, err)
		}
		if got, want := surface(at, indices), leafAreaOf(stand); math.Abs(got/want-1) > 1e-6 {
			t.Errorf("%s: leaves of %.6f m², want %.6f", format, got, want)
		}
		highest := doc.Accessors[leaves.Attributes[gltf.POSITION]].Max[1]
		if highest < stand.Top-0.1 || highest > stand.Top+0.1 {
			t.Errorf("%s: leaves reach %.2f m high, want near %.2f", format, highest, stand.Top)
		}
		if !doc.Materials[*leaves.Material].DoubleSided {
			t.Errorf("%s: leaves have no lower face", format)
		}
	}
}

// surface is the area of triangles.
func surface(at [][3]float32, indices []uint32) float64 {
	point := func(i uint32) mgl64.Vec3 {
		return mgl64.Vec3{float64(at[i][0]), float64(at[i][1]), float64(at[i][2])}
	}
	var area float64
	for k := 0; k < len(indices); k += 3 {
		a, b, c := point(indices[k]), point(indices[k+1]), point(indices[k+2])
		area += b.Sub(a).Cross(c.Sub(a)).Len() / 2
	}
	return area
}

// The OBJ file holds the same triangles, with indices that count through the whole file.
func TestExportedOBJHoldsTheLeafArea(t *testing.T) {
	var at [][3]float32
	var indices []uint32
	object := ""
	for line := range strings.Lines(exported(t, "obj")) {
		var a, b, c float32
		var i, j, k uint32
		switch {
		case strings.HasPrefix(line, "o "):
			object = strings.TrimSpace(line[2:])
		case strings.HasPrefix(line, "v "):
			if _, err := fmt.Sscanf(line, "v %f %f %f", &a, &b, &c); err != nil {
				t.Fatal(line, err)
			}
			at = append(at, [3]float32{a, b, c})
		case strings.HasPrefix(line, "f ") && object == "leaves":
			if _, err := fmt.Sscanf(line, "f %d//%d %d//%d %d//%d", &i, &i, &j, &j, &k, &k); err != nil {
				t.Fatal(line, err)
			}
			indices = append(indices, i-1, j-1, k-1)
		}
	}
	// Written to the micrometre, which a blade of a few centimetres across feels at 1e-4.
	if got, want := surface(at, indices), leafAreaOf(demoStand(t)); math.Abs(got/want-1) > 1e-4 {
		t.Errorf("leaves of %.6f m², want %.6f", got, want)
	}
}

func TestExportedTableListsLeavesAndBunches(t *testing.T) {
	stand := demoStand(t)
	var area float64
	parts := map[string]int{}
	for _, row := range readCSV(t, exported(t, "csv")) {
		parts[row["part"]]++
		if row["part"] == "leaf" {
			one, err := strconv.ParseFloat(row["area_m2"], 64)
			if err != nil {
				t.Fatal(err)
			}
			area += one
		}
	}
	if parts["leaf"] != len(stand.Leaves) || parts["bunch"] != len(stand.Bunches) || math.Abs(area/leafAreaOf(stand)-1) > 1e-12 {
		t.Errorf("%v, leaf area %g m²; want %d, %d, %g", parts, area, len(stand.Leaves), len(stand.Bunches), leafAreaOf(stand))
	}
}

func TestExportRefusesWhatIsNotThere(t *testing.T) {
	file := filepath.Join(t.TempDir(), "vines.glb")
	if got := rowlight("", "export", demo, "--option", "z", "-o", file); got.code == 0 || !strings.Contains(got.stderr, "--option") {
		t.Errorf("code %d: %s", got.code, got.stderr)
	}
	if _, err := os.Stat(file); err == nil {
		t.Error("a file was written all the same")
	}
}
