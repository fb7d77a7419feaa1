package pdf

import (
	"time"

	"underlay/paper"
)

// Document is all that goes into one PDF.
type Document struct {
	Title string
	Parts []paper.Part
	// Attachments are files carried inside (ISO 32000-1, 7.11.4), each under a name of its own.
	Attachments []Attachment
	// Date is when the document was made; the zero time: it does not say.
	Date time.Time
}

// Attachment is a file carried inside a PDF.
type Attachment struct {
	Name    string // without folders
	Type    string // its media type, such as "image/png"; "": not said
	Content []byte
}
