package side

import (
	"encoding/json"
	"errors"
	"fmt"

	"underlay/paper"
	"underlay/template/words"
)

// asked is what a call may be given; each reads what it needs.
type asked struct {
	Text   string   `json:"text"`
	Name   string   `json:"name"`
	Shape  string   `json:"shape"`
	Path   string   `json:"path"`
	What   string   `json:"what"`
	Edits  []chosen `json:"edits"`
	Picked Picked   `json:"picked"`
	Width  int      `json:"width"`
	Page   int      `json:"page"`
	Parts  []string `json:"parts"`
	files  [][]byte
}

// chosen is an edit that comes with all that goes with it, where it was chosen and not typed.
type chosen struct {
	Edit
	Choose bool `json:"choose"`
}

// text is a job's text on its way back, and where in it something was added.
type text struct {
	Text string `json:"text"`
	Path string `json:"path,omitempty"`
}

// openedText is a job that was opened; the contents of its pictures go beside it.
type openedText struct {
	Text     string   `json:"text"`
	Name     string   `json:"name"`
	Pictures []string `json:"pictures"`
}

// none is the answer of a call that has none.
type none struct{}

// Call is a call by its name, as the page's script makes it: arguments and result are JSON, and what is
// too large for that, or is no text, goes beside them as files. The error is a plain sentence.
func (s *Side) Call(name string, arguments []byte, files [][]byte) (result []byte, made [][]byte, err error) {
	call, found := calls[name]
	if !found {
		return nil, nil, fmt.Errorf("the page knows no call %s", words.Quote(name))
	}
	a := asked{files: files}
	if err := json.Unmarshal(arguments, &a); err != nil {
		return nil, nil, fmt.Errorf("call %s: %w", name, err)
	}
	answer, made, err := call(s, a)
	if err != nil {
		return nil, nil, err
	}
	result, err = json.Marshal(answer)
	return result, made, err
}

// calls has a line for each.
var calls = map[string]func(*Side, asked) (any, [][]byte, error){
	// The typeface of the papers, regular and bold (TrueType).
	"Letters": func(*Side, asked) (any, [][]byte, error) {
		return none{}, [][]byte{paper.Typeface(false), paper.Typeface(true)}, nil
	},
	"Name": func(s *Side, a asked) (any, [][]byte, error) {
		s.Name(a.Name)
		return none{}, nil, nil
	},
	"Picture": func(s *Side, a asked) (any, [][]byte, error) {
		if len(a.files) == 0 {
			s.Forget(a.Name)
			return none{}, nil, nil
		}
		return none{}, nil, s.Picture(a.Name, a.files[0])
	},
	"Open": func(_ *Side, a asked) (any, [][]byte, error) {
		if len(a.files) == 0 {
			return nil, nil, errors.New("there is no file to open")
		}
		opened, err := Open(a.files[0], a.Name)
		if err != nil {
			return nil, nil, err
		}
		o := openedText{Text: opened.Text, Name: opened.Name, Pictures: []string{}}
		var contents [][]byte
		for _, p := range opened.Pictures {
			o.Pictures, contents = append(o.Pictures, p.Name), append(contents, p.Content)
		}
		return o, contents, nil
	},
	"Start": func(_ *Side, a asked) (any, [][]byte, error) {
		t, err := Start(a.Shape)
		return text{Text: t}, nil, err
	},
	"Edit": func(s *Side, a asked) (any, [][]byte, error) {
		t := a.Text
		for _, e := range a.Edits {
			var err error
			if e.Choose {
				t, err = s.Choose(t, e.Path, e.Value)
			} else {
				t, err = s.Apply(t, []Edit{e.Edit})
			}
			if err != nil {
				return nil, nil, err
			}
		}
		return text{Text: t}, nil, nil
	},
	"Add": func(s *Side, a asked) (any, [][]byte, error) {
		added, err := s.Add(a.Text, a.What, a.Path)
		return added, nil, err
	},
	"Remove": func(s *Side, a asked) (any, [][]byte, error) {
		t, err := s.Remove(a.Text, a.Path)
		return text{Text: t}, nil, err
	},
	"Look": func(s *Side, a asked) (any, [][]byte, error) { return s.Look(a.Text, a.Picked, a.Width), nil, nil },
	"Papers": func(s *Side, a asked) (any, [][]byte, error) {
		return s.Papers(a.Text, a.Picked.Item, a.Parts), nil, nil
	},
	"Sheet": func(s *Side, a asked) (any, [][]byte, error) {
		svg, err := s.Sheet(a.Text, a.Parts, a.Page)
		return map[string]string{"svg": svg}, nil, err
	},
	"Draw": func(s *Side, a asked) (any, [][]byte, error) {
		pdf, err := s.Draw(a.Text, a.Parts)
		return none{}, [][]byte{pdf}, err
	},
	"Trace": func(s *Side, a asked) (any, [][]byte, error) {
		if len(a.files) == 0 {
			return nil, nil, errors.New("there is no photograph to measure")
		}
		t, err := s.Trace(a.files[0], a.Name, a.What, "", "")
		return struct {
			Traced
			File string `json:"file"`
		}{t, t.Picture.Name}, [][]byte{t.Picture.Content}, err
	},
	"Ruler": func(_ *Side, a asked) (any, [][]byte, error) {
		pdf, err := Ruler(a.Name)
		return none{}, [][]byte{pdf}, err
	},
	"Window": func(_ *Side, a asked) (any, [][]byte, error) {
		pdf, err := Window(a.Name)
		return none{}, [][]byte{pdf}, err
	},
}
