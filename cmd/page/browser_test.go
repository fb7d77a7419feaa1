package main

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
)

// The tests of the page run in a real Chromium, from a file, with every way to a network shut. Where
// there is none they say so and end; package side, which does all the work, is tested without.

// built is the page and a browser to open it in, made once for all tests.
var built struct {
	sync.Once
	dir     string
	page    string // the file
	browser context.Context
	end     func()
	err     error
}

func TestMain(m *testing.M) {
	code := m.Run()
	if built.end != nil {
		built.end()
	}
	if built.dir != "" {
		os.RemoveAll(built.dir)
	}
	os.Exit(code)
}

// chromium returns where Debian and others put the browser; "" for nowhere.
func chromium() string {
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	return ""
}

func build() {
	built.dir, built.err = os.MkdirTemp("", "underlay-page-test")
	if built.err != nil {
		return
	}
	built.page = filepath.Join(built.dir, "underlay.html")
	if built.err = write(built.page); built.err != nil {
		return
	}
	options := []chromedp.ExecAllocatorOption{
		chromedp.ExecPath(chromium()), chromedp.UserDataDir(filepath.Join(built.dir, "profile")),
		chromedp.Headless, chromedp.NoSandbox, chromedp.DisableGPU, chromedp.NoFirstRun,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true),
		chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND"), chromedp.Flag("proxy-server", "127.0.0.1:9"),
		chromedp.WSURLReadTimeout(time.Minute),
	}
	allocated, endAllocated := chromedp.NewExecAllocator(context.Background(), options...)
	browsing, endBrowsing := chromedp.NewContext(allocated)
	built.browser, built.end = browsing, func() {
		endBrowsing()
		endAllocated()
	}
	built.err = chromedp.Run(browsing)
}

// tab is a page open in a browser of its own kind: nothing is remembered from other tests.
type tab struct {
	t    testing.TB
	ctx  context.Context
	of   cdp.BrowserContextID
	kept string // the folder that the browser saves into
	mu   sync.Mutex
	bad  []string // requests, exceptions and refusals seen
}

// open opens the page in a window of so many pixels; nil where there is no browser.
func open(t testing.TB, width, height int64, before ...chromedp.Action) *tab {
	t.Helper()
	if chromium() == "" {
		t.Log("no Chromium is installed here: the page is not tried in a browser")
		return nil
	}
	built.Do(build)
	if built.err != nil {
		t.Fatal(built.err)
	}
	id, err := target.CreateBrowserContext().Do(ofBrowser())
	if err != nil {
		t.Fatal(err)
	}
	return openIn(t, id, width, height, before...)
}

// ofBrowser is for commands to the browser as a whole.
func ofBrowser() context.Context {
	return cdp.WithExecutor(built.browser, chromedp.FromContext(built.browser).Browser)
}

// openIn opens the page in a tab of a browser that remembers what was typed there before.
func openIn(t testing.TB, id cdp.BrowserContextID, width, height int64, before ...chromedp.Action) *tab {
	t.Helper()
	window, err := target.CreateTarget("about:blank").WithBrowserContextID(id).WithNewWindow(true).Do(ofBrowser())
	if err != nil {
		t.Fatal(err)
	}
	ctx, end := chromedp.NewContext(built.browser, chromedp.WithTargetID(window))
	t.Cleanup(end)
	ctx, endTime := context.WithTimeout(ctx, 3*time.Minute)
	t.Cleanup(endTime)
	b := &tab{t: t, ctx: ctx, of: id, kept: t.TempDir()}
	chromedp.ListenTarget(ctx, b.see)
	b.run(network.Enable(), log.Enable(), runtime.Enable(),
		browser.SetDownloadBehavior(browser.SetDownloadBehaviorBehaviorAllow).WithBrowserContextID(id).WithDownloadPath(b.kept).WithEventsEnabled(true),
		emulation.SetDeviceMetricsOverride(width, height, 1, width < 600))
	b.run(before...)
	b.run(chromedp.Navigate("file://"+built.page), chromedp.WaitReady("html[data-ready]", chromedp.ByQuery))
	t.Cleanup(func() {
		b.mu.Lock()
		defer b.mu.Unlock()
		for _, what := range b.bad {
			t.Error(what)
		}
	})
	return b
}

// see notes what must never happen: a request, an exception, something that the page's policy refuses.
func (b *tab) see(event any) {
	what := ""
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		if u := e.Request.URL; u != "file://"+built.page && !strings.HasPrefix(u, "blob:null/") && !strings.HasPrefix(u, "data:") {
			what = "asked for " + u
		}
	case *runtime.EventExceptionThrown:
		what = "exception: " + e.ExceptionDetails.Error()
	case *log.EventEntryAdded:
		what = "the browser says: " + e.Entry.Text
	case *runtime.EventConsoleAPICalled:
		for _, a := range e.Args {
			what += "console: " + string(a.Value) + a.Description
		}
	}
	if what != "" {
		b.mu.Lock()
		b.bad = append(b.bad, what)
		b.mu.Unlock()
	}
}

func (b *tab) run(actions ...chromedp.Action) {
	b.t.Helper()
	if err := chromedp.Run(b.ctx, actions...); err != nil {
		b.t.Fatal(err)
	}
}

// get evaluates an expression in the page.
func get[T any](b *tab, expression string) T {
	b.t.Helper()
	var v T
	b.run(chromedp.Evaluate(expression, &v, func(p *runtime.EvaluateParams) *runtime.EvaluateParams { return p.WithAwaitPromise(true) }))
	return v
}

// until waits until an expression is true. The page's policy forbids to make functions of texts, so it
// is asked from outside.
func (b *tab) until(expression string) {
	b.t.Helper()
	for begun := time.Now(); time.Since(begun) < 40*time.Second; time.Sleep(20 * time.Millisecond) {
		if get[bool](b, "Boolean("+expression+")") {
			return
		}
	}
	b.t.Fatalf("not within 40 seconds: %s\nthe page says: %s", expression, b.answer())
}

// settled waits until the page shows what was asked of it last.
func (b *tab) settled() {
	b.t.Helper()
	b.until(`!document.documentElement.dataset.busy`)
}

// answer is the line that says what fits.
func (b *tab) answer() string { return get[string](b, `document.querySelector(".answer").innerText`) }

// text is the job as it is written.
func (b *tab) text() string { return get[string](b, `document.getElementById("text").value`) }

// blank is a selector of the blank of a path.
func blank(path string) string { return `[data-path="` + path + `"]` }

// fill types into the blank of a path, key by key, what was there being marked.
func (b *tab) fill(path, value string) {
	b.t.Helper()
	b.run(chromedp.Focus(blank(path), chromedp.ByQuery), chromedp.Evaluate(`document.activeElement.select()`, nil), chromedp.KeyEvent(value))
}

// press presses the first button that says so.
func (b *tab) press(text string) {
	b.t.Helper()
	b.run(chromedp.Click(`//button[normalize-space(.)="`+text+`"]`, chromedp.BySearch))
}

// saved waits for a file that the browser saves, and returns it.
func (b *tab) saved(name string) []byte {
	b.t.Helper()
	for range 600 {
		data, err := os.ReadFile(filepath.Join(b.kept, name))
		if err == nil && len(data) > 0 {
			if _, err := os.Stat(filepath.Join(b.kept, name+".crdownload")); err != nil {
				return data
			}
		}
		time.Sleep(50 * time.Millisecond)
	}
	b.t.Fatalf("%s was not saved within 30 seconds", name)
	return nil
}
