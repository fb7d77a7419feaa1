package picture

import (
	"errors"
	"fmt"
	"path"
	"slices"
	"strings"
	"unicode/utf8"

	"underlay/template/words"
)

// longestName is the most bytes the name of a picture's file may have; disks take 255.
const longestName = 200

// CheckName refuses what is not the plain name of a picture's file, one that can be written on any
// disk beside a job file: without folders, not hidden, ending in .png, .jpg or .jpeg. The error is a
// plain sentence.
func CheckName(name string) error {
	shown := words.Quote(name)
	base := path.Base(strings.ReplaceAll(name, `\`, "/"))
	write := `"fern.png"`
	if base != name && nameFault(base) == "" {
		write = words.Quote(base)
	}
	switch trimmed := strings.TrimSpace(name); {
	case trimmed == "":
		return errors.New(`the name is empty; write that of a picture beside the job file, such as "fern.png"`)
	case strings.Contains(name, "://"):
		return fmt.Errorf("%s is an address; save the picture beside the job file, and write its name, such as %s", shown, write)
	case strings.ContainsAny(name, `/\`) || trimmed == "." || trimmed == "..":
		return fmt.Errorf("%s leads to another folder; put the picture beside the job file, and write %s", shown, write)
	case trimmed != name && nameFault(trimmed) == "":
		return fmt.Errorf("%s has a space too many; write %s", shown, words.Quote(trimmed))
	}
	if fault := nameFault(name); fault != "" {
		return fmt.Errorf("%s %s", shown, fault)
	}
	return nil
}

// nameFault says what is wrong with a name without folders, and what to do; "" where nothing is.
func nameFault(name string) string {
	const rename = "; give the picture another name, and write that, such as \"fern.png\""
	ending := strings.ToLower(path.Ext(name))
	device, _, _ := strings.Cut(strings.ToUpper(name), ".")
	sign := strings.IndexFunc(name, func(r rune) bool {
		return words.Unseen(r) || strings.ContainsRune(`/\:*?"<>|`, r)
	})
	switch {
	case !utf8.ValidString(name):
		return "is not UTF-8 text" + rename
	case sign >= 0:
		r, _ := utf8.DecodeRuneInString(name[sign:])
		return fmt.Sprintf("has %s in it, which not every disk takes", words.Shown(string(r))) + rename
	case len(name) > longestName:
		return "is too long a name for some disks" + rename
	case ending == "" || ending == ".":
		return "has no ending; write the whole name, such as " + words.Quote(strings.TrimSuffix(name, ".")+".png")
	case !slices.Contains([]string{".png", ".jpg", ".jpeg"}, ending):
		return "ends in neither .png nor .jpg; save the picture as PNG or JPEG, and write its name, such as " +
			words.Quote(strings.TrimSuffix(name, path.Ext(name))+".png")
	case strings.HasPrefix(name, "."):
		return "begins with a dot, so that it is hidden" + rename
	case isDevice(strings.TrimSpace(device)):
		return "is what Windows calls a device" + rename
	}
	return ""
}

// isDevice tells the names that Windows takes for devices, whatever their ending (Microsoft,
// Naming Files, Paths, and Namespaces; from memory).
func isDevice(name string) bool {
	switch name {
	case "CON", "PRN", "AUX", "NUL", "CONIN$", "CONOUT$":
		return true
	}
	n, found := strings.CutPrefix(name, "COM")
	if !found {
		n, found = strings.CutPrefix(name, "LPT")
	}
	return found && utf8.RuneCountInString(n) == 1 && strings.Contains("0123456789¹²³", n)
}
