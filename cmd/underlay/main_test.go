package main

import (
	"bytes"
	"errors"
	"image"
	"image/draw"
	"image/jpeg"
	"image/png"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"underlay/template/jobfile"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/testscript"
	"github.com/spf13/pflag"
)

func TestMain(m *testing.M) { testscript.Main(m, map[string]func(){"underlay": main}) }

// TestScripts runs the command scripts. Besides testscript's own commands they have:
//
//	exits CODE PROGRAM [ARG...]   runs a program, which must end with the code
//	refused NAME                  underlay fit and draw must both end with 1 on NAME.toml, say what
//	                              NAME.err says, print nothing and leave every file as it was
//	only [FILE...]                the files there are, in the current folder and below
//	bytes FILE TIMES TEXT         writes a file; TEXT is a Go string without its quotes
//	mode FILE PERMISSIONS         the permissions of a file, in octal figures
//	print FILE WIDTH HEIGHT [LEFT TOP RIGHT BOTTOM]...
//	                              writes a picture: black rectangles on white; PNG, or JPEG by its name
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join("..", "..", "testdata", "script"),
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(e *testscript.Env) error {
			e.Setenv("SOURCE_DATE_EPOCH", "")
			photo, err := filepath.Abs(filepath.Join("..", "..", "examples", "fern-photo.jpg"))
			if err != nil {
				return err
			}
			e.Setenv("PHOTO", photo)
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits": exits, "refused": refused, "only": only, "bytes": writeBytes, "mode": mode,
			"print": writePrint,
		},
	})
}

func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE PROGRAM [ARG...]")
	}
	if got := exitCode(ts, args[1:]); strconv.Itoa(got) != args[0] {
		ts.Fatalf("ended with %d, not %s: %s%s", got, args[0], ts.ReadFile("stdout"), ts.ReadFile("stderr"))
	}
}

func exitCode(ts *testscript.TestScript, command []string) int {
	var failed *exec.ExitError
	err := ts.Exec(command[0], command[1:]...)
	if err != nil && !errors.As(err, &failed) {
		ts.Fatalf("%v", err)
	}
	if failed == nil {
		return 0
	}
	return failed.ExitCode()
}

func refused(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: refused NAME")
	}
	file, want := args[0]+".toml", ts.ReadFile(args[0]+".err")
	before := folder(ts)
	for _, command := range [][]string{{"fit"}, {"fit", "--json"}, {"draw"}, {"draw", "-o", "-"}} {
		command = append([]string{"underlay"}, append(command, file)...)
		if got := exitCode(ts, command); got != 1 {
			ts.Fatalf("%v ended with %d, not 1", command, got)
		}
		if d := cmp.Diff(want, ts.ReadFile("stderr")); d != "" {
			ts.Fatalf("%v said something else: %s", command, d)
		}
		if out := ts.ReadFile("stdout"); out != "" {
			ts.Fatalf("%v printed %q", command, out)
		}
	}
	if d := cmp.Diff(before, folder(ts)); d != "" {
		ts.Fatalf("files changed: %s", d)
	}
}

// folder returns the files of the current folder and below, with what is in them.
func folder(ts *testscript.TestScript) map[string]string {
	files := map[string]string{}
	root := ts.MkAbs(".")
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name, _ := filepath.Rel(root, path)
		data, err := os.ReadFile(path)
		files[filepath.ToSlash(name)] = string(data)
		if errors.Is(err, fs.ErrNotExist) {
			return nil // a link that leads nowhere
		}
		return err
	})
	ts.Check(err)
	return files
}

func only(ts *testscript.TestScript, neg bool, args []string) {
	if neg {
		ts.Fatalf("usage: only [FILE...]")
	}
	var got []string
	for name := range folder(ts) {
		if !strings.HasPrefix(name, ".tmp/") { // testscript's own
			got = append(got, name)
		}
	}
	slices.Sort(got)
	slices.Sort(args)
	if d := cmp.Diff(args, got); d != "" {
		ts.Fatalf("other files (-want +got): %s", d)
	}
}

func writeBytes(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: bytes FILE TIMES TEXT")
	}
	times, err := strconv.Atoi(args[1])
	ts.Check(err)
	text, err := strconv.Unquote(`"` + args[2] + `"`)
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), bytes.Repeat([]byte(text), times), 0o644))
}

func mode(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: mode FILE PERMISSIONS")
	}
	info, err := os.Stat(ts.MkAbs(args[0]))
	ts.Check(err)
	if got := strconv.FormatUint(uint64(info.Mode().Perm()), 8); got != args[1] {
		ts.Fatalf("%s has permissions %s, not %s", args[0], got, args[1])
	}
}

func writePrint(ts *testscript.TestScript, neg bool, args []string) {
	var n []int
	for _, a := range args[min(len(args), 1):] {
		i, err := strconv.Atoi(a)
		ts.Check(err)
		n = append(n, i)
	}
	if neg || len(n)%4 != 2 {
		ts.Fatalf("usage: print FILE WIDTH HEIGHT [LEFT TOP RIGHT BOTTOM]...")
	}
	m := image.NewGray(image.Rect(0, 0, n[0], n[1]))
	draw.Draw(m, m.Rect, image.White, image.Point{}, draw.Src)
	for r := n[2:]; len(r) > 0; r = r[4:] {
		draw.Draw(m, image.Rect(r[0], r[1], r[2], r[3]), image.Black, image.Point{}, draw.Src)
	}
	var file bytes.Buffer
	encode := png.Encode
	if !strings.EqualFold(filepath.Ext(args[0]), ".png") {
		encode = func(w io.Writer, m image.Image) error { return jpeg.Encode(w, m, nil) }
	}
	ts.Check(encode(&file, m))
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), file.Bytes(), 0o644))
}

func noEnv(string) (string, bool) { return "", false }

// TestReaderGone lets whoever reads the output go away before anything is written. Where a file
// is written, and only the words about it are lost, that is no failure.
func TestReaderGone(t *testing.T) {
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	guide, lost := filepath.Join(t.TempDir(), "guide.pdf"), filepath.Join(t.TempDir(), "lost.pdf")
	for _, c := range []struct {
		code int
		args []string
	}{
		{1, []string{"help"}}, {1, []string{"start"}},
		{1, []string{"fit", "../../examples/reading-nook.toml"}},
		{1, []string{"fit", "--json", "../../examples/reading-nook.toml"}},
		{1, []string{"draw", "-o", "-", "--parts", "guide", "../../examples/reading-nook-letter.toml"}},
		{1, []string{"draw", "--json", "-o", lost, "--parts", "tags", "../../examples/reading-nook-letter.toml"}},
		{0, []string{"draw", "-o", guide, "--parts", "tags", "../../examples/reading-nook-letter.toml"}},
	} {
		r, w, err := os.Pipe()
		if err != nil {
			t.Fatal(err)
		}
		r.Close()
		var stderr bytes.Buffer
		cmd := exec.Command(self, c.args...)
		cmd.Args[0] = "underlay"
		cmd.Stdout, cmd.Stderr = w, &stderr
		err = cmd.Run()
		w.Close()
		if cmd.ProcessState.ExitCode() != c.code || stderr.Len() > 0 {
			t.Errorf("%v: %v, %q; want exit code %d, and nothing said", c.args, err, stderr.String(), c.code)
		}
	}
	if file, err := os.ReadFile(guide); !bytes.HasPrefix(file, []byte("%PDF-")) {
		t.Errorf("%q is written, %v", file[:min(len(file), 8)], err)
	}
	if _, err := os.Stat(lost); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("%s: %v; it is not to be there", lost, err)
	}
}

// TestHelpText holds the help to the width of a window, and to name every flag there is.
func TestHelpText(t *testing.T) {
	texts := map[string]string{"manual": manual}
	for _, cmd := range commands() {
		var out bytes.Buffer
		if code := run([]string{cmd.name, "--help"}, nil, &out, io.Discard, noEnv); code != 0 {
			t.Errorf("%s --help ends with %d", cmd.name, code)
		}
		texts[cmd.name] = out.String()
		if !strings.Contains(manual, "underlay "+cmd.name) {
			t.Errorf("the manual does not name %s", cmd.name)
		}
	}
	for name, text := range texts {
		for _, line := range strings.Split(text, "\n") {
			if n := len([]rune(line)); n > 82 {
				t.Errorf("%s: %d characters: %s", name, n, line)
			}
		}
	}
	var q jobfile.Quick
	fs := newFlags("fit")
	quickFlags(fs, &q)
	fs.VisitAll(func(f *pflag.Flag) {
		for _, name := range []string{"fit", "draw"} {
			if !strings.Contains(texts[name], "    --"+f.Name+" ") {
				t.Errorf("help %s does not list --%s", name, f.Name)
			}
		}
	})
}

// TestQuickTexts holds the list of flags to the fields of the job they make.
func TestQuickTexts(t *testing.T) {
	var q jobfile.Quick
	for _, f := range quickTexts(&q) {
		*f.to = f.name
	}
	want := jobfile.Quick{Item: "item", Shape: "shape", Border: "border", Hem: "hem", Block: "block", Wood: "wood", Gap: "gap",
		Lap: "lap", Repeat: "repeat", Order: "order", Paper: "paper", Units: "units", Hand: "hand"}
	if d := cmp.Diff(want, q); d != "" {
		t.Error(d)
	}
}
