package verify

import "rowlight/sim/heat"

// heatChecks compare sim/heat.
func heatChecks() []check {
	return []check{
		{
			table: "sphere_convection", compares: "forced, free and blended convection", allowed: 0.5, unit: "%", cites: "Whitaker",
			asks:    []column{number("D_mm", 1e-3, 1000), number("u_m_s", 0, 100), number("T_air_C", -50, 80), number("T_surf_C", -50, 80)},
			answers: numbers("Re", "mu_ratio", "Nu_forced", "h_forced", "Ra", "Nu_free", "h_free", "Nu_mixed"),
			begin:   each(compareConvection),
		},
		{
			table: "sphere_conduction", compares: "sunlit and shaded pole, mean, terminator", allowed: 0.01, unit: "K", cites: "axisymmetric finite volume",
			asks: []column{number("radius_mm", 1e-3, 1000), number("k", 1e-6, 1000), number("h", 1e-6, 1e4), number("q0", 0, 1e4)},
			answers: numbers("fv_subsolar", "fv_antisolar", "fv_mean", "fv_terminator", "fv_volmean",
				"series_subsolar", "series_antisolar", "series_terminator", "exact_mean"),
			begin: each(compareConduction),
		},
	}
}

// compareConvection compares the exchange of a sphere with the air at standard pressure.
func compareConvection(r row, f *found) {
	around := heat.Around{Air_C: r.at("T_air_C"), Wind_ms: r.at("u_m_s")}
	c := heat.SphereConvection(r.at("D_mm")/1000, around, r.at("T_surf_C"))
	f.ratio(r, "Re", c.Reynolds)
	f.ratio(r, "mu_ratio", c.ViscosityRatio)
	f.ratio(r, "Nu_forced", c.NusseltForced)
	f.ratio(r, "h_forced", c.Forced)
	f.ratio(r, "Ra", c.Rayleigh)
	f.ratio(r, "Nu_free", c.NusseltFree)
	f.ratio(r, "h_free", c.Free)
	f.ratio(r, "Nu_mixed", c.Nusselt)
}

// compareConduction compares the rise over air of a sphere in a beam.
func compareConduction(r row, f *found) {
	q0, h, k, radius := r.at("q0"), r.at("h"), r.at("k"), r.at("radius_mm")/1000
	lit, mean, shaded := heat.BeamPoles(q0, h, k, radius)
	terminator := heat.BeamRise(0, q0, h, k, radius)
	for _, pair := range []struct {
		column string
		got    float64
	}{
		{"fv_subsolar", lit}, {"series_subsolar", lit}, {"fv_antisolar", shaded}, {"series_antisolar", shaded},
		{"fv_mean", mean}, {"fv_volmean", mean}, {"exact_mean", mean}, {"fv_terminator", terminator}, {"series_terminator", terminator},
	} {
		f.near(r, pair.column, pair.got)
	}
}
