package words

import (
	"slices"
	"strings"

	"rowlight/sim/result"
)

// Chain puts a chain in words: its parts, what each of its numbers is, and whence. The chain that is given stays as it
// is; a code without a text stays a code.
func (s Style) Chain(chain result.Chain) result.Chain {
	chain.Links = slices.Clone(chain.Links)
	for i := range chain.Links {
		link := &chain.Links[i]
		link.Part = s.Text("chain.part."+link.Part, nil, nil)
		link.Meaning = s.meaning(link.Symbol)
		if link.Source != "" {
			link.Source = s.Text("source."+link.Source, nil, nil)
		}
	}
	return chain
}

// meaning is what a symbol stands for. Nets are counted in their symbols: all of them mean the same.
func (s Style) meaning(symbol string) string {
	if strings.HasPrefix(symbol, "net") {
		symbol = strings.Map(func(r rune) rune {
			if '0' <= r && r <= '9' {
				return -1
			}
			return r
		}, symbol)
	}
	return s.Text("chain."+symbol, nil, nil)
}

// Inputs puts the inputs that ranges were drawn of in words: what each is called, and where its range is from.
func (s Style) Inputs(inputs []result.Input) []result.Input {
	inputs = slices.Clone(inputs)
	for i := range inputs {
		in := &inputs[i]
		in.Name = s.Text("input."+in.Key, nil, nil)
		in.Source = s.Text("input."+in.Key+".source", nil, nil)
	}
	return inputs
}
