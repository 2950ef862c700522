package result

// Ranges is how far the numbers of a day may be off: draws of the uncertain inputs, the same for all options.
type Ranges struct {
	Draws       int           `json:"draws"`
	Inputs      []Input       `json:"inputs"`      // that were drawn
	Options     []OptionBands `json:"options"`     // in the order of the scenario
	Differences []Difference  `json:"differences"` // one per option other than the compared one
}

// Input is one uncertain input.
type Input struct {
	Key    string  `json:"key"`              // by which Band.Most names it
	Name   string  `json:"name,omitempty"`   // for reading; sim/words has it
	Low    float64 `json:"low"`              // least value
	Usual  float64 `json:"usual"`            // with which the central numbers are computed
	High   float64 `json:"high"`             // largest value
	Unit   string  `json:"unit"`             // "1" for factors and shares
	Source string  `json:"source,omitempty"` // where the range is from; sim/words has it
}

// OptionBands are the bands of one option.
type OptionBands struct {
	Sides [2]SummaryBands `json:"sides"` // scenario.Left, scenario.Right
	Hours [2][]HourBands  `json:"hours"` // likewise, at the whole hours from before sunrise to after sunset
}

// HourBands are the bands of the numbers of one side at an hour.
type HourBands struct {
	Hour_h    float64 `json:"hour_h"`
	LitShare  Reach   `json:"litShare"`
	Mean_C    Reach   `json:"mean_C"`
	Hottest_C Reach   `json:"hottest_C"`
}

// Reach is a band alone.
type Reach struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// Band is the range in which four fifths of the draws lie; it always holds the central number.
type Band struct {
	Low  float64 `json:"low"`            // a tenth of the draws lies below
	High float64 `json:"high"`           // a tenth lies above
	Most string  `json:"most,omitempty"` // input that the number follows most; empty when it follows none
	// Error is the standard error of Low and High, the larger of both, as if the draws were random; draws that are
	// spread evenly do better.
	Error float64 `json:"error"`
}

// SummaryBands are the bands of the numbers of a Summary.
type SummaryBands struct {
	Lit_h              Band `json:"lit_h"`
	Light_MJm2         Band `json:"light_MJm2"`
	Hottest_C          Band `json:"hottest_C"`
	HottestAt_h        Band `json:"hottestAt_h"`
	MeanMax_C          Band `json:"meanMax_C"`
	OverWatch_h        Band `json:"overWatch_h"`
	OverHot_h          Band `json:"overHot_h"`
	OverBurn_h         Band `json:"overBurn_h"`
	HottestOverWatch_h Band `json:"hottestOverWatch_h"`
	HottestOverHot_h   Band `json:"hottestOverHot_h"`
	HottestOverBurn_h  Band `json:"hottestOverBurn_h"`
	AtRisk             Band `json:"atRisk"`
	Browning           Band `json:"browning"`
}

// Difference is how the fruit of one option differs from that of the compared one, each on the side where its hottest
// fruit is hotter: option minus compared.
type Difference struct {
	Option           int    `json:"option"`   // index in the scenario
	Compared         int    `json:"compared"` // index of the other
	Hottest          Versus `json:"hottest_K"`
	HottestOverWatch Versus `json:"hottestOverWatch_h"`
	HottestOverHot   Versus `json:"hottestOverHot_h"`
	HottestOverBurn  Versus `json:"hottestOverBurn_h"`
	AtRisk           Versus `json:"atRisk"`
}

// Versus is a difference with its band, and how often it is of either sign. More is worse.
type Versus struct {
	Central float64 `json:"central"`
	Low     float64 `json:"low"`    // a tenth of the draws lies below
	High    float64 `json:"high"`   // a tenth lies above
	Worse   float64 `json:"worse"`  // share of draws in which the option is worse than the compared one [0–1]
	Better  float64 `json:"better"` // share in which it is better; the rest are equal
}

// SummaryNumbers is how many numbers a Summary has.
const SummaryNumbers = 13

// Numbers are the numbers of a summary, in the order of its fields.
func (s *Summary) Numbers() [SummaryNumbers]float64 {
	return [SummaryNumbers]float64{
		s.Lit_h, s.Light_MJm2, s.Hottest_C, s.HottestAt_h, s.MeanMax_C, s.OverWatch_h, s.OverHot_h, s.OverBurn_h,
		s.HottestOverWatch_h, s.HottestOverHot_h, s.HottestOverBurn_h, s.AtRisk, s.Browning,
	}
}

// SetNumbers is the reverse of Numbers.
func (s *Summary) SetNumbers(n [SummaryNumbers]float64) {
	*s = Summary{n[0], n[1], n[2], n[3], n[4], n[5], n[6], n[7], n[8], n[9], n[10], n[11], n[12]}
}

// Each are the bands in the order of Summary.Numbers.
func (b *SummaryBands) Each() [SummaryNumbers]*Band {
	return [SummaryNumbers]*Band{
		&b.Lit_h, &b.Light_MJm2, &b.Hottest_C, &b.HottestAt_h, &b.MeanMax_C, &b.OverWatch_h, &b.OverHot_h, &b.OverBurn_h,
		&b.HottestOverWatch_h, &b.HottestOverHot_h, &b.HottestOverBurn_h, &b.AtRisk, &b.Browning,
	}
}
