package main

import (
	"bytes"
	"compress/gzip"
	"encoding/ascii85"
	"io"
	"regexp"
	"strings"
	"testing"
)

// TestSameBytes makes the page twice: the same bytes come out, and they are below what goes into a
// mail without a thought.
func TestSameBytes(t *testing.T) {
	p := program{wasm: bytes.Repeat([]byte("\x00asm, and more of it <&\\"), 50_000), glue: []byte("class Go {}"), notices: []byte("MIT")}
	a, err := assemble(p)
	if err != nil {
		t.Fatal(err)
	}
	b, err := assemble(p)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(a, b) {
		t.Error("two pages of the same program differ")
	}
}

// TestPolicy: the page holds nothing that its policy does not name, and names nothing from outside.
func TestPolicy(t *testing.T) {
	page, err := assemble(program{glue: []byte("class Go {}")})
	if err != nil {
		t.Fatal(err)
	}
	text := string(page)
	policy := regexp.MustCompile(`Content-Security-Policy" content="([^"]*)"`).FindStringSubmatch(text)[1]
	for _, part := range []struct{ open, close, directive string }{{"<style>", "</style>", "style-src"}, {`<script type="module">`, "</script>", "script-src"}} {
		_, rest, _ := strings.Cut(text, part.open)
		inside, _, _ := strings.Cut(rest, part.close)
		if !strings.Contains(policy, part.directive+" '"+hash(inside)+"'") {
			t.Errorf("%s does not name the %s that is there", part.directive, part.open)
		}
	}
	for _, never := range []string{"http:", "https:", "unsafe-inline", "'unsafe-eval'", "connect-src", "*"} {
		if strings.Contains(policy, never) {
			t.Errorf("the policy has %s: %s", never, policy)
		}
	}
	if !strings.HasPrefix(policy, "default-src 'none';") {
		t.Errorf("what is not named is let in: %s", policy)
	}
	for _, inline := range []string{` style="`, ` onclick="`, ` onload="`, `href="http`, `src="http`} {
		if strings.Contains(text, inline) {
			t.Errorf("the page has %s", inline)
		}
	}
}

// TestPack unpacks with the standard library what the page unpacks with its own few lines.
func TestPack(t *testing.T) {
	program := append(bytes.Repeat([]byte{0, 0, 0, 0, 1}, 1000), []byte("end")...)
	packed, err := pack(program)
	if err != nil {
		t.Fatal(err)
	}
	if strings.ContainsAny(packed, "<&\\") {
		t.Error("letters that mean something in HTML are left")
	}
	letters := strings.NewReplacer("v", "<", "w", "&", "x", "\\").Replace(packed)
	z, err := gzip.NewReader(ascii85.NewDecoder(strings.NewReader(letters)))
	if err != nil {
		t.Fatal(err)
	}
	got, err := io.ReadAll(z)
	if err != nil || !bytes.Equal(got, program) {
		t.Errorf("%d bytes came back of %d (%v)", len(got), len(program), err)
	}
}

func TestModules(t *testing.T) {
	script, err := joinModules("page")
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(script, "\nimport ") || strings.Contains(script, "\nexport ") {
		t.Error("an import or export is left")
	}
	at := func(name string) int { return strings.Index(script, "const module_"+name+" = ") }
	if dom, page := at("dom"), at("page"); dom < 0 || page < dom {
		t.Errorf("dom at %d, page at %d", dom, page)
	}
	if _, err := joinModules("nowhere"); err == nil {
		t.Error("a module that is not there was joined")
	}
}
