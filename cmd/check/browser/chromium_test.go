//go:build browser

package browser

import (
	"context"
	"fmt"

	"github.com/chromedp/chromedp"
)

// startChromium starts one headless browser. Whatever it asks of a host other than this machine goes
// through a proxy that refuses; a proxy is never used for the machine itself. What the browser asks on
// its own account, which no flag quiets fully, is kept apart from what pages ask: each tab has a proxy
// of its own. The flags keep the browser from slowing pages that are not in front.
func startChromium(profile string, flags ...chromedp.ExecAllocatorOption) (context.Context, func(), error) {
	options := append([]chromedp.ExecAllocatorOption{
		chromedp.Headless, chromedp.NoSandbox, chromedp.DisableGPU, chromedp.NoFirstRun, chromedp.NoDefaultBrowserCheck,
		chromedp.UserDataDir(profile),
		chromedp.ProxyServer(bench.maker.address()),
		chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-sync", true),
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-default-apps", true),
		chromedp.Flag("disable-extensions", true),
		chromedp.Flag("disable-domain-reliability", true),
		chromedp.Flag("disable-client-side-phishing-detection", true),
		chromedp.Flag("disable-features", "OptimizationHints,MediaRouter,Translate,AutofillServerCommunication,CertificateTransparencyComponentUpdater"),
		chromedp.Flag("disable-dev-shm-usage", true),
		chromedp.Flag("disable-backgrounding-occluded-windows", true),
		chromedp.Flag("disable-renderer-backgrounding", true),
		chromedp.Flag("disable-background-timer-throttling", true),
		chromedp.Flag("force-color-profile", "srgb"),
		chromedp.Flag("hide-scrollbars", true),
		chromedp.WindowSize(1440, 900),
	}, flags...)
	allocator, stopAllocator := chromedp.NewExecAllocator(context.Background(), options...)
	browser, stopBrowser := chromedp.NewContext(allocator)
	stop := func() {
		stopBrowser()
		stopAllocator()
	}
	if err := chromedp.Do(browser); err != nil {
		stop()
		return nil, nil, fmt.Errorf("Chromium does not start (`go run ./cmd/check -only chromium` installs it): %w", err)
	}
	return browser, stop, nil
}
