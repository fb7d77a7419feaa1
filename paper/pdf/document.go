package pdf

import (
	"time"

	"underlay/paper"
)

// Document is all that goes into one PDF.
type Document struct {
	Title string
	Parts []paper.Part
	// Attachment is a file carried inside (ISO 32000-1, 7.11.4); none where its name is "".
	Attachment Attachment
	// Date is when the document was made; the zero time: it does not say.
	Date time.Time
}

// Attachment is a file carried inside a PDF.
type Attachment struct {
	Name    string
	Content []byte
}
