package jobfile

import (
	"encoding/binary"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf16"

	"underlay/template/internal/repo"
	"underlay/template/job"
	"underlay/template/words"

	"github.com/google/go-cmp/cmp"
)

// asUTF16 writes a text as UTF-16 with its mark: FF FE where the lower byte comes first (The
// Unicode Standard, chapter 3, D98 and D101; from memory).
func asUTF16(order binary.AppendByteOrder, text string) []byte {
	var data []byte
	for _, unit := range utf16.Encode([]rune("\ufeff" + text)) {
		data = order.AppendUint16(data, unit)
	}
	return data
}

// TestUTF16 reads every example as an old Windows shell writes it with >, and as UTF-8 with a mark.
func TestUTF16(t *testing.T) {
	files, err := filepath.Glob(repo.Path(t, "examples", "*.toml"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	for _, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		text := strings.ReplaceAll(string(data), "\n", "\r\n")
		want := readJob(t, string(data))
		for what, file := range map[string][]byte{
			"little-endian": asUTF16(binary.LittleEndian, text),
			"big-endian":    asUTF16(binary.BigEndian, text),
			"UTF-8":         []byte("\ufeff" + text),
		} {
			got, err := ReadWith("nook.toml", file, examplePictures)
			if err != nil {
				t.Errorf("%s, %s: %v", name, what, err)
				continue
			}
			if d := cmp.Diff(said(want), said(got)); d != "" {
				t.Errorf("%s, %s: %s", name, what, d)
			}
		}
	}
}

// said is what a job says, without its file.
func said(j *job.Job) string {
	text := fmt.Sprintf("%q %v %+v", j.Title, j.Units, j.Paper)
	for _, it := range j.Items {
		text += fmt.Sprintf("\n%q %v %+v %q", it.Name, it.Size, it.Border, it.Faces)
		for _, p := range it.Passes {
			text += fmt.Sprintf("\n%q %q %+v %v", p.Name, p.Block.Name, p.Gap, p.Turns)
		}
	}
	return text
}

// TestNotText reads files in other encodings.
func TestNotText(t *testing.T) {
	whole := asUTF16(binary.LittleEndian, "title = 'Nook'\n")
	for _, c := range []struct {
		data []byte
		want string
	}{
		{whole[:len(whole)-1], "nook.toml: the file begins as UTF-16 and does not go on as that; save it as UTF-8"},
		{append(whole[:4:4], 0, 0xd8, 'a', 0), "nook.toml: the file begins as UTF-16 and does not go on as that; save it as UTF-8"},
		{whole[2:], "nook.toml: this is not a text in UTF-8; save the file as UTF-8"},
		{[]byte("title = 'Nook'\n# caf\xe9\n"), "nook.toml:2: this line is not UTF-8 text; save the file as UTF-8"},
	} {
		if _, err := Read("nook.toml", c.data); err == nil || err.Error() != c.want {
			t.Errorf("%q: %v\nwant: %s", c.data, err, c.want)
		}
	}
}

// TestOneLetterTwoForms names a block with é in one piece and a pass with e and an accent: both
// look the same, and are (The Unicode Standard, annex 15: canonical equivalence).
func TestOneLetterTwoForms(t *testing.T) {
	const one, two = "caf\u00e9", "cafe\u0301"
	job := readJob(t, "[[block]]\nname = '"+one+"'\nprint = '40 x 40 mm'\n[[item]]\nname = '"+two+"'\nsize = '30 x 30 cm'\nborder = '2 cm'\n"+
		"[[item.pass]]\nblock = '"+two+"'\ngap = '1 mm'\n")
	if b := job.Items[0].Passes[0].Block; b != job.Blocks[0] {
		t.Errorf("the pass has block %v", b)
	}
	for _, name := range []string{one, two} {
		if err := Override(job, Overrides{Item: name}); err != nil {
			t.Errorf("%q: %v", name, err)
		}
	}
	_, err := Read("nook.toml", []byte("[[block]]\nname = '"+one+"'\nprint = '40 x 40 mm'\n[[block]]\nname = '"+two+"'\nprint = '40 x 40 mm'\n"))
	if err == nil || !strings.Contains(err.Error(), "is the name of the block in line 2 already") {
		t.Errorf("two blocks that look the same: %v", err)
	}
}

// TestUnseen puts characters that steer a terminal, or turn the direction of writing, everywhere
// in a job: none of them is in what is said of it.
func TestUnseen(t *testing.T) {
	for _, bad := range []string{"\x1b[31m", "\u202e", "\u2066", "\u200f", "\u009b", "\x7f", "\ufeff"} {
		quoted := fmt.Sprintf("\\u%04X", []rune(bad)[0])
		for _, text := range []string{
			"[[block]]\nname = 'fern'\nprint = \"40" + quoted + " mm\"\n",
			"[[block]]\nname = 'fern'\nshape = \"ro" + quoted + "und\"\nprint = '40 mm'\n",
			"\"zeb" + quoted + "ra\" = 1\n",
			"zeb" + bad + "ra = 1\n",
			"title = \"" + bad + "\n",
			"[pa" + bad + "per\n",
			"[paper]\nsize = \"A" + quoted + "4\"\n",
		} {
			_, err := Read("nook.toml", []byte(text))
			if err == nil {
				t.Errorf("%q is taken", text)
				continue
			}
			if i := strings.IndexFunc(err.Error(), func(r rune) bool { return r != '\n' && words.Unseen(r) }); i >= 0 {
				t.Errorf("%q: %q", text, err.Error())
			}
		}
	}
}
