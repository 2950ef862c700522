package render

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// ballCorners and ballTriangles are a regular icosahedron in the unit sphere, counter-clockwise from outside.
var (
	ballCorners   = icosahedron()
	ballTriangles = [20][3]uint32{
		{0, 11, 5}, {0, 5, 1}, {0, 1, 7}, {0, 7, 10}, {0, 10, 11},
		{1, 5, 9}, {5, 11, 4}, {11, 10, 2}, {10, 7, 6}, {7, 1, 8},
		{3, 9, 4}, {3, 4, 2}, {3, 2, 6}, {3, 6, 8}, {3, 8, 9},
		{4, 9, 5}, {2, 4, 11}, {6, 2, 10}, {8, 6, 7}, {9, 8, 1},
	}
)

func icosahedron() [12]mgl64.Vec3 {
	golden := (1 + math.Sqrt(5)) / 2
	corners := [12]mgl64.Vec3{
		{-1, golden, 0}, {1, golden, 0}, {-1, -golden, 0}, {1, -golden, 0},
		{0, -1, golden}, {0, 1, golden}, {0, -1, -golden}, {0, 1, -golden},
		{golden, 0, -1}, {golden, 0, 1}, {-golden, 0, -1}, {-golden, 0, 1},
	}
	for i := range corners {
		corners[i] = corners[i].Normalize()
	}
	return corners
}
