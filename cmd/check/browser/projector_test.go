//go:build browser

package browser

// What a room must be able to read from its last row, and how much contrast must be left where a lamp washes the
// picture out: a display of gamma 1.8 instead of the 2.2 for which colours are chosen.
const projectorReads = `((least) => {
	const seen = (e) => e.checkVisibility({ checkOpacity: true, checkVisibilityCSS: true }) && !e.closest(".visually-hidden, .pane-labels, :disabled, option") && e.getBoundingClientRect().width > 1;
	const name = (e) => e.tagName.toLowerCase() + "." + (e.getAttribute("class") ?? "") + " " + (e.textContent ?? "").trim().slice(0, 40);
	const scale = (e) => e.ownerSVGElement ? Math.hypot(e.getScreenCTM().a, e.getScreenCTM().b) : 1;
	const canvas = new OffscreenCanvas(1, 1).getContext("2d", { willReadFrequently: true });
	const rgba = (colour) => { canvas.clearRect(0, 0, 1, 1); canvas.fillStyle = colour; canvas.fillRect(0, 0, 1, 1); return [...canvas.getImageData(0, 0, 1, 1).data]; };
	const ground = (e) => { for (; e; e = e.parentElement) { const c = rgba(getComputedStyle(e).backgroundColor); if (c[3] > 200) return c; } return [255, 255, 255, 255]; };
	const light = (c, curve) => 0.2126 * curve(c[0] / 255) + 0.7152 * curve(c[1] / 255) + 0.0722 * curve(c[2] / 255);
	const contrast = (a, b, curve) => { const [x, y] = [light(a, curve), light(b, curve)].sort((p, q) => q - p); return (x + 0.05) / (y + 0.05); };
	const srgb = (v) => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
	const washed = (v) => v ** 1.8;
	const faults = new Set();
	for (const e of document.querySelectorAll("#app *")) {
		const style = getComputedStyle(e);
		const speaks = e instanceof HTMLSelectElement || e instanceof HTMLInputElement && e.type === "text" || [...e.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim());
		if (speaks && seen(e)) {
			const size = parseFloat(style.fontSize) * scale(e);
			if (size < least.text - 0.05) faults.add(name(e) + ": text of " + size.toFixed(1) + " px");
			const ink = rgba(e instanceof SVGElement ? style.fill : style.color);
			const on = ground(e);
			if (contrast(ink, on, srgb) < least.contrast) faults.add(name(e) + ": contrast " + contrast(ink, on, srgb).toFixed(1));
			if (contrast(ink, on, washed) < least.washed) faults.add(name(e) + ": contrast " + contrast(ink, on, washed).toFixed(1) + " where the picture is washed out");
		}
		if (e instanceof SVGGeometryElement && style.stroke !== "none" && seen(e)) {
			const width = parseFloat(style.strokeWidth) * (style.vectorEffect === "non-scaling-stroke" ? 1 : scale(e));
			if (width < least.line - 0.05) faults.add(name(e) + ": a line of " + width.toFixed(1) + " px");
		}
		for (const side of ["Top", "Right", "Bottom", "Left"]) {
			const width = parseFloat(style["border" + side + "Width"]);
			if (width > 0 && width < least.line && rgba(style["border" + side + "Color"])[3] && seen(e)) faults.add(name(e) + ": a border of " + width + " px");
		}
	}
	return [...faults].slice(0, 25);
})({ text: 24, line: 3, contrast: 7, washed: 4.5 })`

// readFromTheLastRow turns the look for a projector on and off again, and wants of a picture of 1024 by 768 what the
// last row of a room needs.
func (p *tab) readFromTheLastRow() {
	p.t.Helper()
	p.viewport(1024, 768, 1)
	p.click("projector")
	p.click("option-B-hottest-why")
	eval[bool](p, `(document.querySelectorAll("main details").forEach((d) => { d.open = true; }), true)`)
	p.still()
	for _, fault := range eval[[]string](p, projectorReads) {
		p.t.Error(fault)
	}
	p.accessible()
	if wide := eval[int](p, `document.scrollingElement.scrollWidth`); wide > 1024 {
		p.t.Errorf("the page is %d px wide on a projector of 1024", wide)
	}
	p.shot("look-projector")
	if look := eval[string](p, `document.documentElement.dataset.theme`); look != "projector" {
		p.t.Errorf("the look is %q", look)
	}
	p.click("projector")
	if look := eval[string](p, `document.documentElement.dataset.theme`); look == "projector" {
		p.t.Error("the look for a projector stays on")
	}
}
