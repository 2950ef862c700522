package scenario

// Option is one way to plant, train and shade the vines of the site.
type Option struct {
	// Name is what the user calls this option; empty takes the name of the form.
	Name string `json:"name" jsonschema:"maxLength=60,default="`
	// Form is the key of the training form whose sizes are the defaults of all that follows.
	Form string `json:"form" jsonschema:"default=vsp-spurs"`
	// Rows is the planting.
	Rows Rows `json:"rows"`
	// Trellis is the posts and wires.
	Trellis Trellis `json:"trellis"`
	// Training is where the permanent wood goes.
	Training Training `json:"training"`
	// Shoots is the growth of the season.
	Shoots Shoots `json:"shoots"`
	// Leaves is the leaf area that the shoots carry.
	Leaves Leaves `json:"leaves"`
	// Bunches is the crop.
	Bunches Bunches `json:"bunches"`
	// Shade is the nets, films and mist that keep sun and heat off.
	Shade Shade `json:"shade"`
	// Cost is what it costs.
	Cost Cost `json:"cost"`
}

// Called is what people call the option: its own name, or the trade name of its form.
func (o Option) Called() string {
	if form, ok := FormByKey(o.Form); ok && o.Name == "" {
		return form.Name
	}
	return o.Name
}

// Rows is the planting: where the rows run and how far apart the vines stand.
type Rows struct {
	// Azimuth is the compass direction of the row line, clockwise from true north; 0 and 180 are the same row.
	Azimuth_deg float64 `json:"azimuth_deg" jsonschema:"minimum=0,maximum=180,default=0" jsonschema_extras:"x-unit=deg,x-step=5"`
	// RowSpacing is the distance between row lines.
	RowSpacing_m float64 `json:"rowSpacing_m" jsonschema:"minimum=1,maximum=6,default=2.7" jsonschema_extras:"x-unit=m,x-step=0.1"`
	// VineSpacing is the distance between vines in the row.
	VineSpacing_m float64 `json:"vineSpacing_m" jsonschema:"minimum=0.5,maximum=4,default=1.8" jsonschema_extras:"x-unit=m,x-step=0.1"`
}

// Trellis is the posts and wires.
type Trellis struct {
	// Wires run along the row; vines that stand free have none.
	Wires []Wire `json:"wires" jsonschema:"maxItems=24"`
	// PostSpacing is the distance between line posts.
	PostSpacing_m float64 `json:"postSpacing_m" jsonschema:"minimum=2,maximum=12,default=5.4" jsonschema_extras:"x-unit=m,x-step=0.1"`
	// CrossWires is the distance between wires across the row that join the roof wires into a net; 0 for none.
	CrossWires_m float64 `json:"crossWires_m" jsonschema:"minimum=0,maximum=3,default=0" jsonschema_extras:"x-unit=m,x-step=0.1"`
	// AfternoonWire is the height of one more foliage wire on the afternoon side of the row, over which shoots lean out;
	// 0 for none. On east-west rows that is the side that faces the equator.
	AfternoonWire_m float64 `json:"afternoonWire_m" jsonschema:"minimum=0,maximum=3,default=0" jsonschema_extras:"x-unit=m,x-step=0.05"`
	// AfternoonOut is how far from the row line it runs.
	AfternoonOut_m float64 `json:"afternoonOut_m" jsonschema:"minimum=0.1,maximum=1.5,default=0.5" jsonschema_extras:"x-unit=m,x-step=0.05"`
}

// Wire is one wire along the row.
type Wire struct {
	// Height above the ground at the row line.
	Height_m float64 `json:"height_m" jsonschema:"minimum=0.2,maximum=3,default=1" jsonschema_extras:"x-unit=m,x-step=0.05"`
	// Offset sideways from the row line, positive on the side that lies clockwise of the row azimuth
	// (the east side of a north-south row).
	Offset_m float64 `json:"offset_m" jsonschema:"minimum=-1.5,maximum=1.5,default=0" jsonschema_extras:"x-unit=m,x-step=0.05"`
	// Role is what the wire does: carry arms (fruiting); hold shoots that lie over it (foliage); in pairs, hold
	// shoots upright between them, or below the arms those turned down (catch); hold the ends of bent canes (tie);
	// or, side by side overhead, carry shoots spread over them (roof).
	Role WireRole `json:"role" jsonschema:"enum=fruiting,enum=foliage,enum=catch,enum=tie,enum=roof,default=foliage"`
}

// WireRole is what a wire does.
type WireRole string

// The roles of a wire.
const (
	Fruiting WireRole = "fruiting"
	Foliage  WireRole = "foliage"
	Catch    WireRole = "catch"
	Tie      WireRole = "tie"
	Roof     WireRole = "roof"
)

// Shoots is the growth of the season and how it is held.
type Shoots struct {
	// PerMetre counts shoots per metre of canopy (per metre of fruiting wire, or of the row where arms spread)
	// on full-grown vines, before any are thinned.
	PerMetre float64 `json:"perMetre" jsonschema:"minimum=2,maximum=160,default=15" jsonschema_extras:"x-unit=1/m,x-step=1"`
	// Length is the mean length of a shoot, before any trimming.
	Length_m float64 `json:"length_m" jsonschema:"minimum=0.2,maximum=3,default=1.3" jsonschema_extras:"x-unit=m,x-step=0.05"`
	// Internode is the mean distance between nodes.
	Internode_cm float64 `json:"internode_cm" jsonschema:"minimum=2,maximum=12,default=5.2" jsonschema_extras:"x-unit=cm,x-step=0.1"`
	// Habit is how the variety holds its shoots: 1 upright, 0 trailing.
	Habit float64 `json:"habit" jsonschema:"minimum=0,maximum=1,default=0.6" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// Start is the inclination above the horizontal at which shoots leave the wood; negative points down.
	Start_deg float64 `json:"start_deg" jsonschema:"minimum=-90,maximum=90,default=70" jsonschema_extras:"x-unit=deg,x-step=5"`
	// Positioning is the share of shoots that the crew has put where the wires are meant to hold them.
	Positioning float64 `json:"positioning" jsonschema:"minimum=0,maximum=1,default=0.95" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// CombedDown is the share of shoots combed to hang down.
	CombedDown float64 `json:"combedDown" jsonschema:"minimum=0,maximum=1,default=0" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// TurnedDown is the share of shoots turned down, on the lowest fruiting wires first; catch wires below the arms hold them.
	TurnedDown float64 `json:"turnedDown" jsonschema:"minimum=0,maximum=1,default=0" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// Thinned is the share of shoots taken out, evenly along the wood.
	Thinned float64 `json:"thinned" jsonschema:"minimum=0,maximum=0.8,default=0" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// TrimTop is the height at which shoots are hedged; 0 leaves them.
	TrimTop_m float64 `json:"trimTop_m" jsonschema:"minimum=0,maximum=4,default=0" jsonschema_extras:"x-unit=m,x-step=0.05"`
	// TrimSide is the distance from the row line at which both sides are hedged; 0 leaves them.
	TrimSide_m float64 `json:"trimSide_m" jsonschema:"minimum=0,maximum=2,default=0" jsonschema_extras:"x-unit=m,x-step=0.05"`
	// Skirt is the height at which hanging shoots are cut off below; 0 leaves them.
	Skirt_m float64 `json:"skirt_m" jsonschema:"minimum=0,maximum=2,default=0" jsonschema_extras:"x-unit=m,x-step=0.05"`
}

// Leaves is the leaf area that the shoots carry.
type Leaves struct {
	// Area is one-sided leaf area per metre of canopy (per metre of fruiting wire, or of the row where arms spread)
	// on full-grown vines, before shoots are thinned or cut and leaves pulled; it is given, and leaf density follows.
	Area_m2_per_m float64 `json:"area_m2_per_m" jsonschema:"minimum=0,maximum=12,default=4.7" jsonschema_extras:"x-unit=m2/m,x-step=0.1"`
	// Blade is the mean area of one full-grown primary leaf.
	Blade_cm2 float64 `json:"blade_cm2" jsonschema:"minimum=20,maximum=300,default=100" jsonschema_extras:"x-unit=cm2,x-step=5"`
	// Laterals is the share of the leaf area that grows on laterals.
	Laterals float64 `json:"laterals" jsonschema:"minimum=0,maximum=0.7,default=0.31" jsonschema_extras:"x-unit=1,x-step=0.01"`
	// Water is how the vines are watered: without want, short of water, or thirsty. It sets how far leaves open to
	// cool themselves; it changes neither their area nor where they hang.
	Water Water `json:"water" jsonschema:"enum=watered,enum=short,enum=thirsty,default=watered"`
	// RemovedMorning is the share of leaves pulled on the morning side of the row.
	RemovedMorning float64 `json:"removedMorning" jsonschema:"minimum=0,maximum=1,default=0" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// RemovedAfternoon is the share of leaves pulled on the afternoon side of the row.
	RemovedAfternoon float64 `json:"removedAfternoon" jsonschema:"minimum=0,maximum=1,default=0" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// RemovedFrom is the height from which leaves are pulled where RemovedTo gives a band of its own.
	RemovedFrom_m float64 `json:"removedFrom_m" jsonschema:"minimum=0,maximum=3.5,default=0" jsonschema_extras:"x-unit=m,x-step=0.05"`
	// RemovedTo is the height up to which leaves are pulled; 0 pulls them in the fruit zone, from just above to just
	// below the bunches.
	RemovedTo_m float64 `json:"removedTo_m" jsonschema:"minimum=0,maximum=3.5,default=0" jsonschema_extras:"x-unit=m,x-step=0.05"`
	// RemovedOn is the date on which leaves are pulled, as year-month-day of any year: before it they hang, and in the
	// week after it the fruit is newly uncovered. Without a date they were pulled long before.
	RemovedOn string `json:"removedOn" jsonschema:"default="`
}

// Water is how the vines of an option are watered.
type Water string

// The states of water.
const (
	Watered Water = "watered"
	Short   Water = "short"
	Thirsty Water = "thirsty"
)

// Bunches is the crop.
type Bunches struct {
	// PerShoot is the mean number of bunches on a shoot.
	PerShoot float64 `json:"perShoot" jsonschema:"minimum=0.2,maximum=3,default=1.8" jsonschema_extras:"x-unit=1,x-step=0.1"`
	// Mass of one bunch.
	Mass_g float64 `json:"mass_g" jsonschema:"minimum=20,maximum=1000,default=130" jsonschema_extras:"x-unit=g,x-step=5"`
}
