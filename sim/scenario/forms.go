package scenario

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"sync"
)

// Form is one training form of the catalogue: the sizes that an option of this form starts from.
type Form struct {
	// Key is what Option.Form holds.
	Key string `json:"key"`
	// Name is the trade name.
	Name string `json:"name"`
	// Line says in one sentence what the form does to leaves and fruit.
	Line string `json:"line"`
	// Habit is the growth habit that the form suits: upright, semi-upright or trailing.
	Habit string `json:"habit"`
	// Sources say where the sizes come from and how sure they are.
	Sources []string `json:"sources"`
	// Option holds the sizes.
	Option Option `json:"option"`
}

//go:embed forms.json
var formsJSON []byte

// catalogue reads the embedded forms once; a fault in them is a fault of the program.
var catalogue = sync.OnceValue(func() []Form {
	forms, err := readForms(formsJSON)
	if err != nil {
		panic("scenario: forms.json: " + err.Error())
	}
	return forms
})

// readForms decodes a catalogue. What an option of it does not say takes the default of its tag, as a
// page does that reads the same file.
func readForms(raw []byte) ([]Form, error) {
	var rows []struct {
		Form
		Option json.RawMessage `json:"option"`
	}
	if err := json.Unmarshal(raw, &rows); err != nil {
		return nil, err
	}
	forms := make([]Form, len(rows))
	for i, row := range rows {
		forms[i] = row.Form
		option := &forms[i].Option
		fillDefaults(reflect.ValueOf(option).Elem())
		if len(row.Option) > 0 {
			if err := json.Unmarshal(row.Option, (*plainOption)(option)); err != nil {
				return nil, fmt.Errorf("form %q: %w", row.Key, err)
			}
		}
		option.Form = row.Key
		if row.Key == "" || slices.ContainsFunc(forms[:i], func(f Form) bool { return f.Key == row.Key }) {
			return nil, fmt.Errorf("form %d: key %q is empty or used twice", i, row.Key)
		}
	}
	return forms, nil
}

// Forms lists the training forms in the order of the catalogue. The caller owns the copy.
func Forms() []Form {
	forms := slices.Clone(catalogue())
	for i := range forms {
		forms[i] = forms[i].clone()
	}
	return forms
}

// FormByKey finds a form; false when the catalogue has no such key.
func FormByKey(key string) (Form, bool) {
	forms := catalogue()
	i := slices.IndexFunc(forms, func(f Form) bool { return f.Key == key })
	if i < 0 {
		return Form{}, false
	}
	return forms[i].clone(), true
}

// FormKeys lists the keys of all forms.
func FormKeys() []string {
	var keys []string
	for _, form := range catalogue() {
		keys = append(keys, form.Key)
	}
	return keys
}

// clone shares nothing with the catalogue.
func (f Form) clone() Form {
	f.Sources = slices.Clone(f.Sources)
	f.Option.Trellis.Wires = slices.Clone(f.Option.Trellis.Wires)
	return f
}
