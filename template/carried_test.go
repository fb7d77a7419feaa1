package template

import (
	"bytes"
	"testing"

	"underlay/paper/pdf"
	"underlay/template/jobfile"
	"underlay/template/plan"
)

// TestCarriedJobDrawsTheSame draws jobs changed by flags, takes the job out of the PDF and draws
// that, under another name: the PDFs are the same, byte for byte.
func TestCarriedJobDrawsTheSame(t *testing.T) {
	drawn := func(name string, data []byte, o jobfile.Overrides) ([]byte, error) {
		j, err := jobfile.Read(name, data)
		if err != nil {
			return nil, err
		}
		if err := jobfile.Override(j, o); err != nil {
			return nil, err
		}
		p, err := plan.New(j)
		if err != nil {
			return nil, err
		}
		doc, _, err := Document(p, UsualParts())
		if err != nil {
			return nil, err
		}
		var file bytes.Buffer
		err = pdf.Write(&file, doc)
		return file.Bytes(), err
	}
	const job = "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[item]]\nname = 'cushion'\nsize = '40 x 40 cm'\nborder = '25 mm'\n" +
		"[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n[[item]]\nname = 'bag'\nsize = '30 x 40 cm'\nborder = '25 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n"
	for _, o := range []jobfile.Overrides{
		{Item: "bag"}, {Paper: "A3", Lines: "strong"}, {Item: "cushion", Extent: "edges"}, {Item: "bag", Paper: "one sheet"},
	} {
		first, err := drawn("nook.toml", []byte(job), o)
		if err != nil {
			t.Errorf("%+v: %v", o, err)
			continue
		}
		in, err := pdf.Open(bytes.NewReader(first), int64(len(first)))
		if err != nil {
			t.Errorf("%+v: %v", o, err)
			continue
		}
		carried, err := in.File(CarriedName, len(first))
		if err != nil {
			t.Errorf("%+v: %v", o, err)
			continue
		}
		second, err := drawn("again.toml", carried.Content, jobfile.Overrides{})
		if err != nil || !bytes.Equal(first, second) {
			t.Errorf("%+v: drawn again it differs (%v); the job is\n%s", o, err, carried.Content)
		}
	}
}
