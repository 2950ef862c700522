package scenario

// Training is where the permanent wood goes and what is left at pruning.
type Training struct {
	// ArmsPerVine is the number of arms of one vine, shared out over the fruiting wires.
	ArmsPerVine int `json:"armsPerVine" jsonschema:"minimum=1,maximum=6,default=2"`
	// ArmLayout is where the arms go: along their fruiting wires, or spread from the head to all sides.
	ArmLayout ArmLayout `json:"armLayout" jsonschema:"enum=along,enum=spread,default=along"`
	// ArmLength is the length of spread arms; those along a wire reach half way to the next vine.
	ArmLength_m float64 `json:"armLength_m" jsonschema:"minimum=0.1,maximum=2,default=0.5" jsonschema_extras:"x-unit=m,x-step=0.05"`
	// ArmRise is the inclination of spread arms above the horizontal; under roof wires they lie on the roof.
	ArmRise_deg float64 `json:"armRise_deg" jsonschema:"minimum=0,maximum=80,default=45" jsonschema_extras:"x-unit=deg,x-step=5"`
	// HeadHeight is the height at which the arms of a vine without fruiting wire leave the trunk.
	HeadHeight_m float64 `json:"headHeight_m" jsonschema:"minimum=0.1,maximum=2,default=0.4" jsonschema_extras:"x-unit=m,x-step=0.05"`
	// Wood is what is left at pruning: spurs on cordons, or canes.
	Wood Wood `json:"wood" jsonschema:"enum=spurs,enum=canes,default=spurs"`
	// SpurSpacing is the distance between spurs along a cordon, and between canes that leave one.
	SpurSpacing_m float64 `json:"spurSpacing_m" jsonschema:"minimum=0.05,maximum=1,default=0.15" jsonschema_extras:"x-unit=m,x-step=0.01"`
	// CaneLayout is where canes go: they are the arms themselves (along), or leave a cordon and are arched over
	// and tied to a tie wire below (arched), bent straight down to it (tied-down), or hang as they like (free).
	CaneLayout CaneLayout `json:"caneLayout" jsonschema:"enum=along,enum=arched,enum=tied-down,enum=free,default=along"`
	// CaneNodes is the number of nodes of a cane that leaves a cordon; it sets the length of the cane.
	CaneNodes int `json:"caneNodes" jsonschema:"minimum=2,maximum=40,default=10"`
	// BareBase is the part of a spread arm, or of a cane that leaves a cordon, that bears no shoots, from its base.
	BareBase float64 `json:"bareBase" jsonschema:"minimum=0,maximum=0.9,default=0" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// SingleArmVines is the share of vines that keep one arm only; the rest of their wire stays bare.
	SingleArmVines float64 `json:"singleArmVines" jsonschema:"minimum=0,maximum=0.5,default=0" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// YoungVines is the share of vines whose arms have grown to half of their length.
	YoungVines float64 `json:"youngVines" jsonschema:"minimum=0,maximum=0.5,default=0" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// MissingVines is the share of vines that are not there.
	MissingVines float64 `json:"missingVines" jsonschema:"minimum=0,maximum=0.5,default=0" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// BlindNodes is the share of the places for shoots that stay without one.
	BlindNodes float64 `json:"blindNodes" jsonschema:"minimum=0,maximum=0.8,default=0" jsonschema_extras:"x-unit=1,x-step=0.05"`
}

// ArmLayout is where the arms of a vine go.
type ArmLayout string

// The ways to lay arms.
const (
	ArmsAlong  ArmLayout = "along"
	ArmsSpread ArmLayout = "spread"
)

// Wood is what is left at pruning.
type Wood string

// The kinds of fruiting wood.
const (
	Spurs Wood = "spurs"
	Canes Wood = "canes"
)

// CaneLayout is where canes go.
type CaneLayout string

// The ways to lay canes.
const (
	CanesAlong    CaneLayout = "along"
	CanesArched   CaneLayout = "arched"
	CanesTiedDown CaneLayout = "tied-down"
	CanesFree     CaneLayout = "free"
)
