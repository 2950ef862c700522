package crop

import (
	"math"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// Notices says in a code of the text catalogue when a vine is left more nodes than its vigour carries: more than
// balanced pruning would keep, with a crop too heavy for its wood. Unpruned vines keep many nodes and carry them, as
// their shoots stay short. The path is the JSON pointer of the option.
func Notices(c result.OptionCrop, path string) []scenario.Fault {
	if c.NodesPerVine <= c.BalancedNodes || c.YieldToPrunings.Value <= mostLoad {
		return nil
	}
	return []scenario.Fault{{Code: "notice.nodes", Path: path + "/shoots/perMetre", Values: map[string]any{
		"nodes": c.NodesPerVine, "balanced": c.BalancedNodes, "load": math.Round(10*c.YieldToPrunings.Value) / 10, "most": mostLoad,
	}}}
}
