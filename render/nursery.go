package render

import (
	"reflect"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// standKey is all that the plants of an option depend on. The direction of the rows is not part of it: it
// only decides from which side leaves are pulled. Nets and film come on later.
type standKey struct {
	option      scenario.Option // without its name, the direction of the rows, the sun sides of leaf removal, costs, nets and film
	left, right float64         // share of leaves pulled on each side
	seed        int
	berry_m     float64
}

func newStandKey(option scenario.Option, s scenario.Scenario) standKey {
	key := standKey{
		option: option, seed: s.Seed, berry_m: s.Fruit.Diameter_mm / 1000,
		left:  option.Removed(scenario.Left, s.Site.Latitude_deg),
		right: option.Removed(scenario.Right, s.Site.Latitude_deg),
	}
	key.option = key.option.WithAfternoonWire(s.Site.Latitude_deg)
	key.option.Name, key.option.Rows.Azimuth_deg = "", 0
	key.option.Cost, key.option.Shade = scenario.Cost{}, scenario.Shade{}
	key.option.Leaves.RemovedMorning, key.option.Leaves.RemovedAfternoon = 0, 0
	return key
}

func (k *standKey) equal(other *standKey) bool { return reflect.DeepEqual(k, other) }

// nursery keeps the plants that were grown last, the newest use at the end.
type nursery []grown

type grown struct {
	key    standKey
	plants *plants
}

// nurserySize is the number of stands kept: the most that are shown at once and as many again to go back
// to. One takes about 3 MB.
const nurserySize = 8

// get gives the plants of a key: those kept, or freshly grown ones. An error of pace abandons them.
func (n *nursery) get(key standKey, option scenario.Option, latitude_deg float64, atlas *Atlas, pace func() error) (*plants, error) {
	for i, kept := range *n {
		if kept.key.equal(&key) {
			*n = append(append((*n)[:i:i], (*n)[i+1:]...), kept)
			return kept.plants, nil
		}
	}
	stand, err := training.BuildPaced(option, latitude_deg, key.seed, pace)
	if err != nil {
		return nil, err
	}
	fresh, err := newPlants(stand, key.berry_m, atlas, pace)
	if err != nil {
		return nil, err
	}
	*n = append(*n, grown{key, fresh})
	if len(*n) > nurserySize {
		*n = (*n)[1:]
	}
	return fresh, nil
}
