package render

import "strings"

// CrossSection is the end-on cross-section of an option as an SVG document, without a title and with its sayings unsaid; key tells its ids from
// those of others on the page, feet asks for lengths in feet. It is empty until the plants that are wanted have been grown, and where there are none.
func (st *Stage) CrossSection(option int, key string, feet bool) string {
	o := st.at(option)
	if o == nil {
		return ""
	}
	for _, kept := range st.nursery {
		if !kept.key.equal(&o.wanted) {
			continue
		}
		section := CrossSection{Key: key, Stand: kept.plants.stand, Feet: feet}
		var text strings.Builder
		if section.WriteSVG(&text, Unsaid) != nil { // a builder takes everything
			return ""
		}
		return text.String()
	}
	return ""
}
