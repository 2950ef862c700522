package main

import (
	"bufio"
	"fmt"
	"io"

	"github.com/qmuntal/gltf"
	"github.com/qmuntal/gltf/modeler"

	"rowlight/render"
)

// roughness of all surfaces: vines do not shine.
const roughness = 0.9

// writeGLTF writes solids as glTF 2.0, a node for each, as text with its numbers inside or as one binary file.
func writeGLTF(w io.Writer, title string, solids []render.Solid, binary bool) error {
	doc := gltf.NewDocument()
	doc.Asset.Generator = "Rowlight"
	doc.Scenes[0].Name = title
	for i, s := range solids {
		doc.Materials = append(doc.Materials, &gltf.Material{
			Name: s.Name, DoubleSided: s.TwoSided,
			PBRMetallicRoughness: &gltf.PBRMetallicRoughness{
				BaseColorFactor: &[4]float64{float64(s.Colour[0]), float64(s.Colour[1]), float64(s.Colour[2]), 1},
				MetallicFactor:  gltf.Float(0), RoughnessFactor: gltf.Float(roughness),
			},
		})
		indices := make([]uint32, 0, 3*len(s.Triangles))
		for _, t := range s.Triangles {
			indices = append(indices, t[:]...)
		}
		doc.Meshes = append(doc.Meshes, &gltf.Mesh{Name: s.Name, Primitives: []*gltf.Primitive{{
			Attributes: gltf.PrimitiveAttributes{
				gltf.POSITION: modeler.WritePosition(doc, s.Positions), gltf.NORMAL: modeler.WriteNormal(doc, s.Normals),
			},
			Indices: gltf.Index(modeler.WriteIndices(doc, indices)), Material: gltf.Index(i),
		}}})
		doc.Nodes = append(doc.Nodes, &gltf.Node{Name: s.Name, Mesh: gltf.Index(i)})
		doc.Scenes[0].Nodes = append(doc.Scenes[0].Nodes, i)
	}
	if !binary {
		for _, buffer := range doc.Buffers {
			buffer.EmbeddedResource()
		}
	}
	encoder := gltf.NewEncoder(w)
	encoder.AsBinary = binary
	return encoder.Encode(doc)
}

// writeOBJ writes solids as Wavefront OBJ, an object for each; the format has no colours of its own.
func writeOBJ(w io.Writer, title string, solids []render.Solid) error {
	out := bufio.NewWriter(w)
	fmt.Fprintf(out, "# %s\n# metres; x east, y up, z south\n", title)
	first := uint32(1) // the format counts from 1 through the whole file
	for _, s := range solids {
		fmt.Fprintf(out, "o %s\n", s.Name)
		for _, p := range s.Positions {
			fmt.Fprintf(out, "v %.6f %.6f %.6f\n", p[0], p[1], p[2])
		}
		for _, n := range s.Normals {
			fmt.Fprintf(out, "vn %.4f %.4f %.4f\n", n[0], n[1], n[2])
		}
		for _, t := range s.Triangles {
			a, b, c := first+t[0], first+t[1], first+t[2]
			fmt.Fprintf(out, "f %d//%d %d//%d %d//%d\n", a, a, b, b, c, c)
		}
		first += uint32(len(s.Positions))
	}
	return out.Flush()
}
