package result

// Flows are the heat flows of the berries of one bunch face over a day: means over their skin [W/m² of skin], one value
// per instant, over the step that ends there. Sunlight and longwave are positive into the berry, air and evaporation out
// of it; Sunlight + Longwave − Air − Evaporation is what the berry stores, to rounding.
type Flows struct {
	Option  string `json:"option"`  // letter, A is the first
	Side    string `json:"side"`    // compass direction that the face looks to
	Bunch   int    `json:"bunch"`   // of the side, from 1
	Bunches int    `json:"bunches"` // of the side

	Sunlight_Wm2    []float64 `json:"sunlight_Wm2"`    // taken in
	Longwave_Wm2    []float64 `json:"longwave_Wm2"`    // taken in from sky, floor, leaves and bunch, less what the skin gives off
	Air_Wm2         []float64 `json:"air_Wm2"`         // given to the air; negative where the air warms the berry
	Evaporation_Wm2 []float64 `json:"evaporation_Wm2"` // latent heat given off
	Stored_Wm2      []float64 `json:"stored_Wm2"`      // warming the berry
}
