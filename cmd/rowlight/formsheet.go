package main

import (
	"fmt"
	"io"

	"rowlight/render"
	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// formColumns is the number of cross-sections side by side on the sheet of forms.
const formColumns = 4

// builtForm is a form of the catalogue, built at its own sizes.
type builtForm struct {
	scenario.Form
	stand *training.Stand
}

// buildForms builds every form with the place and seed of the default scenario.
func buildForms() ([]builtForm, error) {
	s := scenario.Default()
	var built []builtForm
	for _, form := range scenario.Forms() {
		stand, err := training.Build(form.Option, s.Site.Latitude_deg, s.Seed)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", form.Key, err)
		}
		built = append(built, builtForm{form, stand})
	}
	return built, nil
}

// drawForms draws the end-on cross-section of every form on one sheet.
func drawForms(w io.Writer) error {
	forms, err := buildForms()
	if err != nil {
		return err
	}
	var sections []render.CrossSection
	for _, form := range forms {
		o := form.Option
		note := fmt.Sprintf("%d %s, %g shoots/m, suits %s vines", o.Training.ArmsPerVine, woodWords(o.Training), o.Shoots.PerMetre, form.Habit)
		sections = append(sections, render.CrossSection{Title: form.Name, Note: note, Stand: form.stand})
	}
	return render.WriteSheet(w, saidInEnglish, "Training forms end-on, looking along the row", sections, formColumns)
}

// woodWords says what bears the shoots, which the end of a row does not show.
func woodWords(t scenario.Training) string {
	switch {
	case t.Wood == scenario.Spurs && t.ArmLayout == scenario.ArmsSpread:
		return "arms with spurs"
	case t.Wood == scenario.Spurs:
		return "cordon arms with spurs"
	case t.CaneLayout == scenario.CanesAlong:
		return "canes along the wire"
	}
	return "arms with canes"
}
