package sim_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/words"
)

// A fork explains while its engine is in the middle of something else, and gives the same chain.
func TestForkExplains(t *testing.T) {
	s, engine := one(t, "vsp-spurs"), sim.NewEngine()
	if _, err := engine.Day(s, free, nil); err != nil {
		t.Fatal(err)
	}
	where := sim.Where{Side: scenario.Left, Bunch: -1, Hour_h: 15}
	want, err := engine.Explain(s, where, free)
	if err != nil {
		t.Fatal(err)
	}
	other, paces, forked := s, 0, result.Chain{}
	other.Site.Slope_deg = 6
	fork := engine.Fork()
	_, err = engine.Day(other, func() error {
		if paces++; paces != 20 {
			return nil
		}
		var err error
		forked, err = fork.Explain(s, where, free)
		return err
	}, nil)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(forked, want) {
		t.Error("a fork gives another chain")
	}
}

// calculator evaluates the relation of a link from the links before it, as a reader with a pocket calculator would.
type calculator map[string]float64

// functions of relations; angles are in degrees.
var functions = map[string]func(x []float64) float64{
	"sin":    func(x []float64) float64 { return math.Sin(x[0] * math.Pi / 180) },
	"cos":    func(x []float64) float64 { return math.Cos(x[0] * math.Pi / 180) },
	"acos":   func(x []float64) float64 { return math.Acos(math.Min(x[0], 1)) * 180 / math.Pi },
	"exp":    func(x []float64) float64 { return math.Exp(x[0]) },
	"ln":     func(x []float64) float64 { return math.Log(x[0]) },
	"sqrt":   func(x []float64) float64 { return math.Sqrt(x[0]) },
	"cbrt":   func(x []float64) float64 { return math.Cbrt(x[0]) },
	"abs":    func(x []float64) float64 { return math.Abs(x[0]) },
	"pow":    func(x []float64) float64 { return math.Pow(x[0], x[1]) },
	"min":    func(x []float64) float64 { return math.Min(x[0], x[1]) },
	"max":    func(x []float64) float64 { return math.Max(x[0], x[1]) },
	"length": func(x []float64) float64 { return math.Sqrt(x[0]*x[0] + x[1]*x[1] + x[2]*x[2]) },
}

func (c calculator) of(relation string) (float64, error) {
	tree, err := parser.ParseExpr(relation)
	if err != nil {
		return 0, err
	}
	return c.value(tree)
}

func (c calculator) value(node ast.Expr) (float64, error) {
	switch n := node.(type) {
	case *ast.BasicLit:
		return strconv.ParseFloat(n.Value, 64)
	case *ast.Ident:
		if value, ok := c[n.Name]; ok {
			return value, nil
		}
		return 0, fmt.Errorf("%s is not known yet", n.Name)
	case *ast.ParenExpr:
		return c.value(n.X)
	case *ast.UnaryExpr:
		x, err := c.value(n.X)
		return -x, err
	case *ast.CallExpr:
		var x []float64
		for _, argument := range n.Args {
			value, err := c.value(argument)
			if err != nil {
				return 0, err
			}
			x = append(x, value)
		}
		f := functions[n.Fun.(*ast.Ident).Name]
		if f == nil {
			return 0, fmt.Errorf("%v is no function", n.Fun)
		}
		return f(x), nil
	case *ast.BinaryExpr:
		return c.binary(n)
	}
	return 0, fmt.Errorf("%T is not understood", node)
}

func (c calculator) binary(n *ast.BinaryExpr) (float64, error) {
	x, err := c.value(n.X)
	if err != nil {
		return 0, err
	}
	y, err := c.value(n.Y)
	if err != nil {
		return 0, err
	}
	holds := map[token.Token]bool{token.GTR: x > y, token.LSS: x < y, token.GEQ: x >= y}
	switch n.Op {
	case token.ADD:
		return x + y, nil
	case token.SUB:
		return x - y, nil
	case token.MUL:
		return x * y, nil
	case token.QUO:
		return x / y, nil
	case token.GTR, token.LSS, token.GEQ:
		if holds[n.Op] {
			return 1, nil
		}
		return 0, nil
	}
	return 0, fmt.Errorf("%v is not understood", n.Op)
}

// follow recomputes every link of a chain from those before it and counts the links that have a relation.
func follow(t *testing.T, chain result.Chain) (recomputed int) {
	t.Helper()
	known, told := calculator{}, words.Style{}.Chain(chain)
	for i, link := range chain.Links {
		if _, double := known[link.Symbol]; double {
			t.Errorf("%s stands for two numbers", link.Symbol)
		}
		said := told.Links[i]
		untold := strings.HasPrefix(said.Meaning, "chain.") || strings.HasPrefix(said.Part, "chain.") || strings.HasPrefix(said.Source, "source.")
		if untold || link.Relation == "" && link.Source == "" {
			t.Errorf("%s does not say what it is or whence: %+v", link.Symbol, said)
		}
		if link.Relation != "" {
			recomputed++
			// The Prandtl factors of convection are read by interpolation, within 1e-6.
			got, err := known.of(link.Relation)
			if err != nil || math.Abs(got-link.Value) > 1e-5*math.Abs(link.Value)+1e-7 {
				t.Errorf("%s side, bunch %d, %.2f h: %s = %s makes %.9g, the chain says %.9g, %v", chain.Side, chain.Bunch, chain.Hour_h, link.Symbol, link.Relation, got, link.Value, err)
			}
		}
		known[link.Symbol] = link.Value
	}
	return recomputed
}

// Every relation of a chain holds, and its end is the value of the face in the day's run, lit or unlit, by day and by
// night, on flat and sloping ground, in calm and wind.
func TestChainCanBeFollowedByHand(t *testing.T) {
	s := scenario.Default()
	s.Site.Slope_deg, s.Site.Aspect_deg = 8, 220
	engine := sim.NewEngine()
	day, err := engine.Day(s, free, nil)
	if err != nil {
		t.Fatal(err)
	}
	lit, stable := map[bool]int{}, map[bool]int{}
	for option := range s.Options {
		for _, side := range scenario.Sides {
			for _, hour := range []float64{0, 4, 7.5, 9.5, 13, 15.5, 17} {
				bunches := []int{-1}
				if hour == 9.5 || hour == 15.5 {
					bunches = append(bunches, 17)
				}
				for _, bunch := range bunches {
					chain, err := engine.Explain(s, sim.Where{Option: option, Side: side, Bunch: bunch, Hour_h: hour}, free)
					if err != nil {
						t.Fatal(err)
					}
					if n := follow(t, chain); n < 45 {
						t.Errorf("only %d links have a relation", n)
					}
					run := &day.Options[option]
					at := int(math.Round(hour*12))*len(run.Faces) + 2*(chain.Bunch-1) + int(side)
					surface, _ := chain.Value("surface")
					whole, _ := chain.Value("after")
					sunlit, _ := chain.Value("lit")
					if float32(surface) != run.Surface_C[at] || float32(whole) != run.Berry_C[at] || uint8(sunlit) != run.Lit[at] {
						t.Errorf("%s %d at %g h: chain %.6f °C, %.6f °C, lit %g; run %.6f, %.6f, %d", chain.Side, chain.Bunch, hour,
							surface, whole, sunlit, run.Surface_C[at], run.Berry_C[at], run.Lit[at])
					}
					lit[sunlit == 1]++
					inverse, _ := chain.Value("inverseL")
					stable[inverse > 0]++
				}
			}
		}
	}
	if lit[true] < 8 || lit[false] < 8 || stable[true] < 8 || stable[false] < 8 {
		t.Errorf("%v lit, %v in stable air say nothing", lit, stable)
	}
}

// The hottest face of a side is none below any other.
func TestChainOfTheHottestBunch(t *testing.T) {
	s := scenario.Default()
	engine := sim.NewEngine()
	day, err := engine.Day(s, free, nil)
	if err != nil {
		t.Fatal(err)
	}
	chain, err := engine.Explain(s, sim.Where{Side: scenario.Right, Bunch: -1, Hour_h: 10.02}, free)
	if err != nil {
		t.Fatal(err)
	}
	faces := len(day.Options[0].Faces)
	surface, _ := chain.Value("surface")
	for f := 1; f < faces; f += 2 {
		if other := day.Options[0].Surface_C[120*faces+f]; other > float32(surface) {
			t.Errorf("face %d has %.3f °C, the hottest %.3f", f, other, surface)
		}
	}
	if chain.Hour_h != 10 || chain.Option != "A" || chain.Bunches != faces/2 {
		t.Errorf("%+v", chain)
	}
	if n, err := engine.Bunches(s, 0); err != nil || n != faces/2 {
		t.Errorf("%d bunches, %v", n, err)
	}
}
