package side

// State is all that is to be said and shown of a job while it is being written.
type State struct {
	// Good tells that the job can be worked out: Problems is empty, and what comes after Values is
	// there. Otherwise it is left out, and the page keeps the last good one.
	Good     bool      `json:"good"`
	Problems []Problem `json:"problems"`
	// Values is what stands in the job; nil where the text is no TOML.
	Values *Values `json:"values"`
	Title  string  `json:"title"`
	// File is the name to save the job under, without an ending: "reading-nook".
	File string `json:"file"`

	// What of the job is shown: the item, the face and the colourway that were picked, or the first.
	Item       int      `json:"item"`
	Items      []string `json:"items"` // names
	Face       int      `json:"face"`
	Faces      []string `json:"faces"` // of the item, those alike together: "front and back"; one "" where it names none
	Colourway  int      `json:"colourway"`
	Colourways []string `json:"colourways"` // of the item, by how many pieces are printed so

	Answer []Answer `json:"answer"`
	More   []More   `json:"more"`
	Serves []string `json:"serves"` // which cloth the same guide serves, and how slips add up, in sentences
	// Overlaps are passes that lie on earlier ones, each with what would avoid it.
	Overlaps []More `json:"overlaps"`
	Notes    []Note `json:"notes"`
	Set      string `json:"set"`   // what the whole job takes, in a sentence; "" where that is one piece on one face
	Shelf    string `json:"shelf"` // of a job without any pass: what every block gives on every item, in lines of even letters

	Picture *Picture `json:"picture"` // the item as it will look, laid flat
	Stands  *Picture `json:"stands"`  // a lampshade as it will stand; nil of anything else. Nothing of its Box is meant
	Order   *Picture `json:"order"`   // the order of printing
	Words   string   `json:"words"`   // the picture in words
	Zones   []Zone   `json:"zones"`   // kept clear, on the face shown
	Placed  []Placed `json:"placed"`  // prints of passes with repeat = "placed", on the face shown
	Colours []Colour `json:"colours"` // that the item's passes name, with those of its colourways
	Accent  string   `json:"accent"`  // the look of the first of them that is known: "#5f7a3a"; "" for none
}

// Problem is one thing wrong with a job, in the command's own words.
type Problem struct {
	Path string `json:"path"` // of the value at fault, or of its table; "": it is of the whole file
	Line int    `json:"line"` // counted from 1; 0: none
	Key  string `json:"key"`  // "" where it is no single one
	Text string `json:"text"` // what is wrong, and what to write instead
}

// Values is what stands in a job, table by table. A key that is not in the text, and would mean
// something there, is in it all the same, with what holds without it.
type Values struct {
	Job    []Value `json:"values"` // of the job itself, [paper], [printing] and [printer]
	Blocks []Table `json:"blocks"`
	Paints []Table `json:"paints"`
	Items  []Item  `json:"items"`
}

// Value is a key of a job and what it says.
type Value struct {
	Path     string   `json:"path"` // item.0.pass.1.gap
	Key      string   `json:"key"`
	Text     string   `json:"text"`  // as it is typed: without TOML's quotes, a list with commas between; "" where it is not given
	Given    bool     `json:"given"` // it stands in the text
	Line     int      `json:"line"`  // where; 0 where it does not
	Usual    string   `json:"usual"` // what holds where it is not given; "" for nothing
	Words    []string `json:"words"` // all it can be, where that is one of a few; none: anything
	Suggests []string `json:"suggests"`
	Kind     string   `json:"kind"` // "a length", "a whole number", "true or false", "a list of names"
	Says     string   `json:"says"` // what it is, in a sentence
	Must     bool     `json:"must"` // it has to be there
	Example  string   `json:"example"`
	Fits     bool     `json:"fits"` // it means something with the rest; otherwise it is only there because it stands in the text
}

// Table is one block, paint, zone, colourway or dab.
type Table struct {
	Path   string  `json:"path"` // block.0
	Name   string  `json:"name"`
	Line   int     `json:"line"`
	Values []Value `json:"values"`
}

// Item is an item with what is in it.
type Item struct {
	Table
	Shape      string  `json:"shape"`
	Passes     []Pass  `json:"passes"`
	Zones      []Table `json:"zones"`
	Colourways []Table `json:"colourways"`
}

// Pass is a pass of an item. Its name is that of its block where it is given none.
type Pass struct {
	Table
	Block  string  `json:"block"`  // "" where it prints several
	Repeat string  `json:"repeat"` // "" where another pass says where its prints go
	Dabs   []Table `json:"dabs"`
}

// Answer is how a pass comes out, in a line.
type Answer struct {
	Pass string `json:"pass"` // its name
	Path string `json:"path"`
	Text string `json:"text"` // "16 prints, 4 across and 4 down, 68.5 mm plain."
}

// More is something that could be had, and the ways to it.
type More struct {
	Path string `json:"path"` // of the pass
	Text string `json:"text"` // "5 across needs"
	Ways []Way  `json:"ways"`
}

// Way is one change that does it, by itself.
type Way struct {
	Text string `json:"text"` // "20 mm more cloth"
	// Edits put it into the job, one after the other, each as Set does; none where no plain edit does.
	Edits []Edit `json:"edits"`
}

// Edit is a value to be set.
type Edit struct {
	Path  string `json:"path"`
	Value string `json:"value"` // as typed; "": to be taken away
}

// Note is something else to know, of a pass or of the job.
type Note struct {
	Path string `json:"path"` // "" of the job
	Text string `json:"text"`
}

// Picture is a drawing for the screen.
type Picture struct {
	// SVG holds marks with a class and a data-number, and no typeface. It may be put into a page as it
	// is: names in it are text, and its ids are its own among the pictures of a State.
	SVG string `json:"svg"`
	Box Box    `json:"box"` // what the whole picture shows, in millimetres of the item's frame
	// Prints is how many prints there are. Image: they are too many for marks of their own, and the
	// picture has an image in it.
	Prints int  `json:"prints"`
	Image  bool `json:"image"`
}

// Box is an upright rectangle in millimetres of the item's frame: x to the right, y down, from the
// top left corner of the item as the face shows it.
type Box struct {
	X float64 `json:"x"`
	Y float64 `json:"y"`
	W float64 `json:"w"`
	H float64 `json:"h"`
}

// Zone is a part kept clear, where it is seen on the face shown.
type Zone struct {
	Path string `json:"path"` // item.0.keep-clear.0
	Name string `json:"name"`
	Box
	// Mirrored: it goes through the item and is seen from behind. Moved to the right here, it is written
	// as moved to the left.
	Mirrored bool `json:"mirrored"`
	// At is what the key says: its top left corner as it is written, in millimetres.
	At Spot `json:"at"`
}

// Spot is a point in millimetres of the item's frame.
type Spot struct {
	X float64 `json:"x"`
	Y float64 `json:"y"`
}

// Placed is a print that the job places by itself.
type Placed struct {
	Path string  `json:"path"` // item.0.pass.2.at.0
	At   Spot    `json:"at"`   // the middle of its face
	Turn float64 `json:"turn"` // in degrees, clockwise
	Box          // of its face as it is turned
}

// Colour is a colour that passes name, and how it looks.
type Colour struct {
	Name  string `json:"name"`
	Looks string `json:"looks"` // "#5f7a3a"
	Known bool   `json:"known"` // from a paint, or a CSS colour name; otherwise it is shown grey
	Path  string `json:"path"`  // of its paint; "" where it has none
}
