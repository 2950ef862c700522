// Package scenario holds the one input document of Rowlight: its types, units, ranges and
// defaults, the JSON Schema made from them, and the validation of raw JSON against it.
//
// The Go types are the single source: every field carries its range and default in the
// `jsonschema` tag, its unit and slider step in the `jsonschema_extras` tag, and its meaning in
// the comment. It computes no physics.
package scenario

// SchemaVersion is the version of the document written by this program. A newer document is
// refused, an older one is migrated.
const SchemaVersion = 1

// Scenario is one site under one sky with one to four options to compare.
type Scenario struct {
	// SchemaVersion is the version of this document.
	SchemaVersion int `json:"schemaVersion" jsonschema:"minimum=1,default=1"`
	// Name is what the user calls this scenario.
	Name string `json:"name" jsonschema:"maxLength=80,default=New vineyard"`
	// Note says where the numbers come from; demo data is marked as invented here.
	Note string `json:"note" jsonschema:"maxLength=400,default="`
	// Site is the place, shared by all options.
	Site Site `json:"site"`
	// Weather is the day, shared by all options.
	Weather Weather `json:"weather"`
	// Season is when vines reach their stages, shared by all options.
	Season Season `json:"season"`
	// Fruit is the variety and its state on that day, shared by all options.
	Fruit Fruit `json:"fruit"`
	// Limits are the temperatures and doses above which fruit is said to be at risk.
	Limits Limits `json:"limits"`
	// Frost is the cold night of spring, shared by all options.
	Frost Frost `json:"frost"`
	// Crop is what vines can carry, fruit brings and hands do, shared by all options.
	Crop Crop `json:"crop"`
	// Weights are what matters to the reader.
	Weights Weights `json:"weights"`
	// Seed chooses the vine that is drawn; the same seed gives the same vine.
	Seed int `json:"seed" jsonschema:"minimum=1,maximum=1000000,default=1"`
	// Compare is the index, from 0, of the option that the others are compared with.
	Compare int `json:"compare" jsonschema:"minimum=0,maximum=3,default=0"`
	// Options are the set-ups compared, one to four.
	Options []Option `json:"options" jsonschema:"required,minItems=1,maxItems=4"`
}

// Site is the place of the vineyard.
type Site struct {
	// Latitude is positive north.
	Latitude_deg float64 `json:"latitude_deg" jsonschema:"minimum=-90,maximum=90,default=36.4" jsonschema_extras:"x-unit=deg,x-step=0.1"`
	// Longitude is positive east.
	Longitude_deg float64 `json:"longitude_deg" jsonschema:"minimum=-180,maximum=180,default=-119.9" jsonschema_extras:"x-unit=deg,x-step=0.1"`
	// Elevation above sea level sets the air pressure.
	Elevation_m float64 `json:"elevation_m" jsonschema:"minimum=-430,maximum=4000,default=90" jsonschema_extras:"x-unit=m,x-step=10"`
	// UTCOffset is the clock of all hours shown: local standard time, no daylight saving.
	UTCOffset_h float64 `json:"utcOffset_h" jsonschema:"minimum=-12,maximum=14,default=-8" jsonschema_extras:"x-unit=h,x-step=0.5"`
	// Slope of the ground; vines stay plumb.
	Slope_deg float64 `json:"slope_deg" jsonschema:"minimum=0,maximum=30,default=0" jsonschema_extras:"x-unit=deg,x-step=1"`
	// Aspect is the compass direction that the slope faces, downhill, from true north.
	Aspect_deg float64 `json:"aspect_deg" jsonschema:"minimum=0,maximum=360,default=180" jsonschema_extras:"x-unit=deg,x-step=5"`
	// Floor is the surface between the rows.
	Floor Floor `json:"floor" jsonschema:"enum=bare-dry,enum=bare-moist,enum=mown-cover,enum=straw,enum=pale,default=mown-cover"`
}

// Floor names a vineyard floor; its optical and thermal values belong to the physics packages.
type Floor string

// The floors that the model knows.
const (
	BareDry   Floor = "bare-dry"
	BareMoist Floor = "bare-moist"
	MownCover Floor = "mown-cover"
	Straw     Floor = "straw"
	Pale      Floor = "pale"
)

// Weather is one day: a design day by its extremes, or 24 measured hours.
type Weather struct {
	// Date is the day, as year-month-day.
	Date string `json:"date" jsonschema:"format=date,default=2026-07-18"`
	// AirMax is the highest air temperature of the day at screen height.
	AirMax_C float64 `json:"airMax_C" jsonschema:"minimum=-10,maximum=55,default=41" jsonschema_extras:"x-unit=degC,x-step=0.5"`
	// AirMin is the lowest air temperature of the day at screen height.
	AirMin_C float64 `json:"airMin_C" jsonschema:"minimum=-25,maximum=45,default=21" jsonschema_extras:"x-unit=degC,x-step=0.5"`
	// AirMaxLag is how long after the sun's highest point the air is hottest on a design day. Parton & Logan
	// 1981 found 1.9 h on the plains; hot inland valleys run to 3 or 4 h (measured hours there).
	AirMaxLag_h float64 `json:"airMaxLag_h" jsonschema:"minimum=0.5,maximum=5,default=3" jsonschema_extras:"x-unit=h,x-step=0.1"`
	// DewPoint is held constant over a design day.
	DewPoint_C float64 `json:"dewPoint_C" jsonschema:"minimum=-30,maximum=32,default=11" jsonschema_extras:"x-unit=degC,x-step=0.5"`
	// Wind is the mean over the day at 10 m above open ground.
	Wind_ms float64 `json:"wind_ms" jsonschema:"minimum=0,maximum=20,default=2.5" jsonschema_extras:"x-unit=m/s,x-step=0.1"`
	// WindFrom is the compass direction that the wind comes from, from true north.
	WindFrom_deg float64 `json:"windFrom_deg" jsonschema:"minimum=0,maximum=360,default=315" jsonschema_extras:"x-unit=deg,x-step=5"`
	// Ozone is the total ozone column.
	Ozone_cm float64 `json:"ozone_cm" jsonschema:"minimum=0.1,maximum=0.6,default=0.3" jsonschema_extras:"x-unit=cm,x-step=0.01"`
	// Water is the precipitable water of the column.
	Water_cm float64 `json:"water_cm" jsonschema:"minimum=0.1,maximum=7,default=1.5" jsonschema_extras:"x-unit=cm,x-step=0.1"`
	// AOD380 is the aerosol optical depth at 380 nm.
	AOD380 float64 `json:"aod380" jsonschema:"minimum=0,maximum=1.5,default=0.15" jsonschema_extras:"x-unit=1,x-step=0.01"`
	// AOD500 is the aerosol optical depth at 500 nm.
	AOD500 float64 `json:"aod500" jsonschema:"minimum=0,maximum=1.5,default=0.1" jsonschema_extras:"x-unit=1,x-step=0.01"`
	// Hours are 24 measured hours that replace the design-day curves; empty for a design day.
	Hours []Hour `json:"hours,omitempty" jsonschema:"maxItems=24"`
	// Source names the file and place that the hours came from; empty for a design day.
	Source string `json:"source,omitempty" jsonschema:"maxLength=200"`
}

// Hour is one measured hour, ending at its stamp: irradiances are means over it, the rest are
// values at its end, as in the typical-year formats. 24 hours make a day, hour 1 ends at 01:00 standard time.
type Hour struct {
	// GHI is global horizontal irradiance.
	GHI_Wm2 float64 `json:"ghi_Wm2" jsonschema:"required,minimum=0,maximum=1500" jsonschema_extras:"x-unit=W/m2"`
	// DNI is direct normal irradiance.
	DNI_Wm2 float64 `json:"dni_Wm2" jsonschema:"required,minimum=0,maximum=1400" jsonschema_extras:"x-unit=W/m2"`
	// DHI is diffuse horizontal irradiance.
	DHI_Wm2 float64 `json:"dhi_Wm2" jsonschema:"required,minimum=0,maximum=1000" jsonschema_extras:"x-unit=W/m2"`
	// Air is the air temperature at screen height.
	Air_C float64 `json:"air_C" jsonschema:"required,minimum=-60,maximum=60" jsonschema_extras:"x-unit=degC"`
	// DewPoint is the dew point at screen height.
	DewPoint_C float64 `json:"dewPoint_C" jsonschema:"required,minimum=-70,maximum=40" jsonschema_extras:"x-unit=degC"`
	// Wind is the wind speed at 10 m.
	Wind_ms float64 `json:"wind_ms" jsonschema:"required,minimum=0,maximum=60" jsonschema_extras:"x-unit=m/s"`
	// WindFrom is the direction that the wind comes from, from true north.
	WindFrom_deg float64 `json:"windFrom_deg" jsonschema:"required,minimum=0,maximum=360" jsonschema_extras:"x-unit=deg"`
	// Longwave is the sky longwave on the horizontal; 0 when the file has none.
	Longwave_Wm2 float64 `json:"longwave_Wm2" jsonschema:"minimum=0,maximum=700,default=0" jsonschema_extras:"x-unit=W/m2"`
}

// Fruit is the variety and its state on the day.
type Fruit struct {
	// Colour of the berries on the day; before veraison all berries are green.
	Colour Colour `json:"colour" jsonschema:"enum=green,enum=white,enum=red,default=red"`
	// Diameter of one berry.
	Diameter_mm float64 `json:"diameter_mm" jsonschema:"minimum=4,maximum=30,default=14" jsonschema_extras:"x-unit=mm,x-step=0.5"`
	// Compactness of the bunch: 0 loose, 1 tight.
	Compactness float64 `json:"compactness" jsonschema:"minimum=0,maximum=1,default=0.3" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// Absorptance is the share of sunlight that the skin absorbs; 0 takes the value of the colour.
	Absorptance float64 `json:"absorptance" jsonschema:"minimum=0,maximum=1,default=0" jsonschema_extras:"x-unit=1,x-step=0.01"`
	// Skin is how much heat the skin of the cultivar stands, against the mean of cultivars.
	Skin Skin `json:"skin" jsonschema:"enum=tender,enum=middling,enum=hardy,default=middling"`
	// Hardening is how the fruit has lived until this day: uncovered within the last week, as the form
	// leaves it, or in the sun since it set.
	Hardening Hardening `json:"hardening" jsonschema:"enum=newly-uncovered,enum=usual,enum=early-exposed,default=usual"`
}

// Skin is a group of cultivars by the heat that their berry skins stand.
type Skin string

// The groups of cultivars.
const (
	Tender   Skin = "tender"
	Middling Skin = "middling"
	Hardy    Skin = "hardy"
)

// Hardening is how fruit has lived before the day.
type Hardening string

// The ways that fruit has lived.
const (
	NewlyUncovered Hardening = "newly-uncovered"
	Usual          Hardening = "usual"
	EarlyExposed   Hardening = "early-exposed"
)

// Colour is the colour of the berry skin.
type Colour string

// The colours that the model knows.
const (
	Green Colour = "green"
	White Colour = "white"
	Red   Colour = "red"
)

// Limits are the thresholds of risk; all are assumptions that the user may change.
type Limits struct {
	// Watch is the lowest of the three counted berry surface temperatures.
	Watch_C float64 `json:"watch_C" jsonschema:"minimum=20,maximum=60,default=35" jsonschema_extras:"x-unit=degC,x-step=0.5"`
	// Hot is the middle one.
	Hot_C float64 `json:"hot_C" jsonschema:"minimum=20,maximum=60,default=40" jsonschema_extras:"x-unit=degC,x-step=0.5"`
	// Burn is the highest one.
	Burn_C float64 `json:"burn_C" jsonschema:"minimum=20,maximum=60,default=45" jsonschema_extras:"x-unit=degC,x-step=0.5"`
	// T50 is the berry surface temperature that kills half of the skins of a middling cultivar within 30 minutes.
	T50_C float64 `json:"t50_C" jsonschema:"minimum=38,maximum=56,default=47" jsonschema_extras:"x-unit=degC,x-step=0.5"`
	// Doubling is the rise in temperature that doubles the rate of damage.
	Doubling_K float64 `json:"doubling_K" jsonschema:"minimum=0.5,maximum=5,default=1.5" jsonschema_extras:"x-unit=K,x-step=0.1"`
	// Tolerated is how far below T50 a skin still repairs damage as fast as it is done.
	Tolerated_K float64 `json:"tolerated_K" jsonschema:"minimum=1,maximum=15,default=5" jsonschema_extras:"x-unit=K,x-step=0.5"`
	// Cultivar is how far T50 of tender and hardy skins lies below and above it.
	Cultivar_K float64 `json:"cultivar_K" jsonschema:"minimum=0,maximum=5,default=1.6" jsonschema_extras:"x-unit=K,x-step=0.1"`
	// Uncovered is how far T50 of newly uncovered fruit lies below it.
	Uncovered_K float64 `json:"uncovered_K" jsonschema:"minimum=0,maximum=6,default=2" jsonschema_extras:"x-unit=K,x-step=0.1"`
	// Hardened is how far T50 of fruit exposed since it set lies above it.
	Hardened_K float64 `json:"hardened_K" jsonschema:"minimum=0,maximum=6,default=1" jsonschema_extras:"x-unit=K,x-step=0.1"`
}
