package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"
	"strings"

	"rowlight/sim/scenario"
	"rowlight/sim/scenario/document"
)

// Columns of a region's plan beside the fields of site and weather.
const (
	siteColumn    = "site"
	fileColumn    = "weather"
	formColumn    = "form"
	azimuthColumn = "azimuth_deg"
)

// regionFields are the parts of a scenario that columns of their fields' names set.
var regionFields = map[string]string{
	"latitude_deg": "site", "longitude_deg": "site", "elevation_m": "site", "utcOffset_h": "site", "slope_deg": "site",
	"aspect_deg": "site", "floor": "site",
	"date": "weather", "airMax_C": "weather", "airMin_C": "weather", "dewPoint_C": "weather", "wind_ms": "weather",
	"windFrom_deg": "weather",
}

// regionCase is one site with one form, and the azimuths of its rows.
type regionCase struct {
	site, form, file string
	scenario         scenario.Scenario // with the form as its one option
	azimuths         []float64
}

// regionFaults are the faults of a plan, by line.
type regionFaults []*faultsError

// Error has a line for each fault.
func (f regionFaults) Error() string {
	var text strings.Builder
	for _, of := range f {
		text.WriteString(of.Error())
	}
	return text.String()
}

func (f regionFaults) badInput() {}

// regionPlan reads a plan: a CSV with a site in each line, whose cells of forms and azimuths may hold several, parted by
// spaces. Base is the raw document that the sites change.
type regionPlan struct {
	path   string
	base   map[string]any
	header []string
	cases  []regionCase
	faults regionFaults
}

// readRegion reads a plan whole; the error has every fault of it.
func readRegion(path string, plan, base []byte) ([]regionCase, error) {
	p := regionPlan{path: path}
	if err := json.Unmarshal(base, &p.base); err != nil {
		return nil, err
	}
	lines := csv.NewReader(strings.NewReader(strings.TrimPrefix(string(plan), "\ufeff")))
	lines.TrimLeadingSpace = true
	header, err := lines.Read()
	if err != nil {
		return nil, fmt.Errorf("%s: a line with the names of columns is wanted: %w", path, err)
	}
	p.header = header
	p.checkHeader()
	if len(p.faults) > 0 {
		return nil, p.faults
	}
	for {
		cells, err := lines.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", path, err)
		}
		line, _ := lines.FieldPos(0)
		p.readLine(line, cells)
	}
	if len(p.faults) > 0 {
		return nil, p.faults
	}
	return p.cases, nil
}

func (p *regionPlan) fault(line int, faults ...scenario.Fault) {
	if len(faults) > 0 {
		p.faults = append(p.faults, &faultsError{fmt.Sprintf("%s: line %d", p.path, line), faults})
	}
}

// checkHeader names columns that are unknown, there twice, or missing.
func (p *regionPlan) checkHeader() {
	wanted := []string{siteColumn, formColumn, azimuthColumn}
	known := slices.Concat(wanted, []string{fileColumn}, slices.Sorted(maps.Keys(regionFields)))
	for i, name := range p.header {
		path := fmt.Sprintf("/column %d", i+1)
		switch {
		case slices.Contains(p.header[:i], name):
			p.fault(1, scenario.Fault{Code: "fault.column-twice", Path: path, Values: map[string]any{"value": name}})
		case !slices.Contains(known, name):
			p.fault(1, scenario.Fault{Code: "fault.choice", Path: path, Values: map[string]any{"value": name, "allowed": known}})
		}
	}
	for _, name := range wanted {
		if !slices.Contains(p.header, name) {
			p.fault(1, scenario.Fault{Code: "fault.missing", Path: "/" + name})
		}
	}
}

// readLine reads one site; an empty cell leaves its field as the base has it.
func (p *regionPlan) readLine(line int, cells []string) {
	of := regionCase{}
	var forms []string
	site, day := maps.Clone(p.part("site")), maps.Clone(p.part("weather"))
	parts := map[string]map[string]any{"site": site, "weather": day}
	for i, cell := range cells {
		cell = strings.TrimSpace(cell)
		switch name := p.header[i]; name {
		case siteColumn:
			of.site = cell
		case fileColumn:
			of.file = cell
		case formColumn:
			forms = strings.Fields(cell)
		case azimuthColumn:
			of.azimuths = p.azimuths(line, cell)
		default:
			if cell != "" {
				parts[regionFields[name]][name] = p.value(line, name, cell)
			}
		}
	}
	if len(forms) == 0 {
		p.fault(line, scenario.Fault{Code: "fault.missing", Path: "/" + formColumn})
	}
	for _, form := range forms {
		of.form = form
		p.add(line, of, site, day)
	}
}

// part is an object of the base.
func (p *regionPlan) part(name string) map[string]any {
	if part, ok := p.base[name].(map[string]any); ok {
		return part
	}
	return map[string]any{}
}

// value reads a cell as its field wants it: as a number where the schema has one.
func (p *regionPlan) value(line int, name, cell string) any {
	if _, ok := document.NumberField("/" + regionFields[name] + "/" + name); !ok {
		return cell
	}
	number, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		p.notNumber(line, name)
		return 0.0
	}
	return number
}

func (p *regionPlan) notNumber(line int, name string) {
	p.fault(line, scenario.Fault{Code: "fault.type", Path: "/" + name, Values: map[string]any{"want": []string{"number"}, "got": "text"}})
}

// azimuths reads the directions of rows.
func (p *regionPlan) azimuths(line int, cell string) (azimuths []float64) {
	field, _ := document.NumberField("/options/0/rows/azimuth_deg")
	for text := range strings.FieldsSeq(cell) {
		azimuth, err := strconv.ParseFloat(text, 64)
		switch {
		case err != nil:
			p.notNumber(line, azimuthColumn)
		case !(azimuth >= field.Min && azimuth <= field.Max):
			p.fault(line, scenario.Fault{Code: "fault.range", Path: "/" + azimuthColumn, Values: map[string]any{
				"value": azimuth, "min": field.Min, "max": field.Max, "unit": field.Unit}})
		default:
			azimuths = append(azimuths, azimuth)
		}
	}
	if strings.TrimSpace(cell) == "" {
		p.fault(line, scenario.Fault{Code: "fault.missing", Path: "/" + azimuthColumn})
	}
	return azimuths
}

// add makes the scenario of a site with a form, as the base has it if one of its options is of that form.
func (p *regionPlan) add(line int, of regionCase, site, day map[string]any) {
	option := map[string]any{"form": of.form}
	options, _ := p.base["options"].([]any)
	for _, known := range options {
		if known, ok := known.(map[string]any); ok && known["form"] == of.form {
			option = known
			break
		}
	}
	whole := maps.Clone(p.base)
	whole["name"], whole["site"], whole["weather"], whole["options"], whole["compare"] = of.site, site, day, []any{option}, 0
	raw, err := json.Marshal(whole)
	if err != nil { // it was read from JSON and numbers
		panic(err)
	}
	var faults []scenario.Fault
	if of.scenario, faults = document.Parse(raw); len(faults) > 0 {
		p.fault(line, faults...)
		return
	}
	p.cases = append(p.cases, of)
}
