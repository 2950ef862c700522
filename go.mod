module rowlight

go 1.26.0

require (
	github.com/andybalholm/brotli v1.2.8
	github.com/chromedp/cdproto v0.159.0
	github.com/chromedp/chromedp v0.23.0
	github.com/evanw/esbuild v0.28.2
	github.com/go-gl/mathgl v1.2.0
	github.com/google/go-cmp v0.7.0
	github.com/hajimehoshi/ebiten/v2 v2.8.8
	github.com/invopop/jsonschema v0.14.0
	github.com/qmuntal/gltf v0.28.0
	github.com/santhosh-tekuri/jsonschema/v6 v6.0.3
	github.com/schollz/progressbar/v3 v3.19.1
	github.com/sixdouglas/suncalc v0.0.0-20250114185126-291b1938b70c
	github.com/spf13/cobra v1.10.2
	go.yaml.in/yaml/v4 v4.0.0-rc.2
	golang.org/x/image v0.25.0
	golang.org/x/sync v0.24.0
	golang.org/x/term v0.48.0
	golang.org/x/tools v0.52.0
	gonum.org/v1/gonum v0.17.0
	pgregory.net/rapid v1.3.0
)

require (
	github.com/bahlo/generic-list-go v0.2.0 // indirect
	github.com/buger/jsonparser v1.1.2 // indirect
	github.com/ebitengine/gomobile v0.0.0-20240911145611-4856209ac325 // indirect
	github.com/ebitengine/hideconsole v1.0.0 // indirect
	github.com/ebitengine/purego v0.8.0 // indirect
	github.com/go-json-experiment/json v0.0.0-20260213210345-44df1a37e875 // indirect
	github.com/inconshreveable/mousetrap v1.1.0 // indirect
	github.com/jezek/xgb v1.1.1 // indirect
	github.com/mitchellh/colorstring v0.0.0-20190213212951-d06e56a500db // indirect
	github.com/pb33f/ordered-map/v2 v2.3.1 // indirect
	github.com/rivo/uniseg v0.4.7 // indirect
	github.com/spf13/pflag v1.0.9
	golang.org/x/sys v0.50.0 // indirect
	golang.org/x/text v0.23.0
)
