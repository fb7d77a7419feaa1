package pdfread

import (
	"bytes"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
)

// Config returns a configuration for pdfcpu that reads and writes nothing in the user's home.
func Config() *model.Configuration {
	api.DisableConfigDir()
	return model.NewDefaultConfiguration()
}

// userUnits returns the user units of the pages of a PDF file (ISO 32000-1, Table 30), as
// pdfcpu reads them.
func userUnits(t testing.TB, pdf []byte) func(page int) float64 {
	t.Helper()
	if !bytes.Contains(pdf, []byte("/UserUnit")) {
		return func(int) float64 { return 1 }
	}
	ctx, err := api.ReadAndValidate(bytes.NewReader(pdf), Config())
	if err != nil {
		t.Fatalf("pdfcpu: %v", err)
	}
	return func(page int) float64 {
		d, _, _, err := ctx.PageDict(page+1, false)
		if err != nil {
			t.Fatalf("pdfcpu: %v", err)
		}
		unit, found := d.Find("UserUnit")
		if !found {
			return 1
		}
		n, err := ctx.DereferenceNumber(unit)
		if err != nil {
			t.Fatalf("pdfcpu: %v", err)
		}
		return n
	}
}
