package sample

import (
	"strings"
	"testing"
	"underlay/template/job"
	"underlay/template/jobfile"
)

// Hard are jobs harder than the examples, in a maker's own words as far as can be.
func Hard(t *testing.T) map[string]*job.Job {
	t.Helper()
	read := func(text string) *job.Job {
		job, err := jobfile.Read("nook.toml", []byte(text))
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		return job
	}
	const fern = "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\nwood = '98 x 104 mm'\nwood-offset = '0 x 2 mm'\n"
	const wave = "[[block]]\nname = 'wave'\nprint = '60 x 40 mm'\n"
	const acorn = "[[block]]\nname = 'acorn'\nprint = '30 x 30 mm'\n"
	const cushion = "[[item]]\nname = 'floor cushion'\nsize = '50 x 50 cm'\nborder = '25 mm'\n"
	const fernPass = "[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n"
	name := func(s string) string { return strings.Repeat(s, 300)[:300] }

	jobs := map[string]*job.Job{
		"inches": read("units = 'in'\n[paper]\nsize = 'Letter'\nmargin = '1/4 in'\nreach = '1 1/8 in'\n" +
			"[[block]]\nname = 'pebble'\nprint = '2 3/16 x 1 7/16 in'\n" +
			"[[item]]\nname = 'stool top'\nsize = '17 x 13 1/2 in'\nborder = '5/8 in'\nhem = '3/8 in'\n" +
			"[[item.pass]]\nblock = 'pebble'\ngap = '1/16 in to 1/4 in'\n"),
		"small blocks": read("[[block]]\nname = 'pebble'\nprint = '30 x 30 mm'\n" +
			"[[item]]\nname = 'bench runner'\nsize = '600 x 400 mm'\nborder = '12 mm'\n" +
			"[[item.pass]]\nblock = 'pebble'\ngap = '1 mm'\n"),
		"tiny blocks": read("[paper]\nsize = 'A5'\n[[block]]\nname = 'seed'\nprint = '8 x 8 mm'\n" +
			"[[item]]\nname = 'bookmark'\nsize = '180 x 120 mm'\nborder = '6 mm'\n" +
			"[[item.pass]]\nblock = 'seed'\ngap = '0.5 mm'\n"),
		"borders of all kinds": read("[printing]\nhand = 'left'\n" + wave +
			"[[item]]\nname = 'book bag'\nsize = '380 x 420 mm'\nborder = ['70 mm', '22 mm', '31.5 mm', '44 mm']\nhem = '15 mm'\n" +
			"[[item.keep-clear]]\nname = 'handle'\nat = '100 x 40 mm'\nsize = '60 x 90 mm'\n" +
			"[[item.pass]]\nblock = 'wave'\ngap = '1 mm'\ncentre-across = 'joint'\norder = 'rows'\n"),
		"lap": read("[paper]\nsize = 'A3'\n[[block]]\nname = 'wave'\nprint = '60 x 40 mm'\nwood = '61 x 41 mm'\n" +
			"[[item]]\nname = 'bench runner'\nsize = '35 x 90 cm'\nborder = '20 mm'\n" +
			"[[item.pass]]\nblock = 'wave'\nlap = '0.5 mm'\n"),
		"strong": read("[paper]\nlines = 'strong'\n" + fern + cushion + "hem = '12 mm'\n" + fernPass),
		"edges":  read("[paper]\nextent = 'edges'\n" + fern + strings.Replace(cushion, "50 x 50", "80 x 90", 1) + fernPass),
		"round edges": read("[paper]\nextent = 'edges'\n[[block]]\nname = 'pebble'\nshape = 'round'\nprint = '15 cm'\n" +
			"[[item]]\nname = 'table cloth'\nshape = 'round'\nsize = '160 cm'\nborder = '40 mm'\n[[item.pass]]\nblock = 'pebble'\ngap = '2 mm'\n"),
		"corrected":          read("[printer]\nacross = '179.2 mm'\ndown = '248.9 mm'\n" + fern + cushion + fernPass),
		"corrected, smaller": read("[printer]\nacross = '180.9 mm'\ndown = '251.3 mm'\n" + fern + cushion + fernPass),
		"two passes": read("[paper]\nsize = 'A3'\nreach = '32 mm'\n" + fern + acorn + cushion +
			fernPass + "[[item.pass]]\nblock = 'acorn'\ngap = '61 mm'\ncentre-across = 'joint'\ncentre-down = 'joint'\n"),
		"two faces": read("[paper]\nsize = '300 x 500 mm'\nmargin = '5 mm'\noverlap = '8 mm'\n" + fern + acorn +
			cushion + "faces = ['front', 'back']\n" + fernPass +
			"[[item.pass]]\nname = 'acorns'\nblock = 'acorn'\nface = 'back'\ngap = '25 mm'\n"),
		"faces that differ": read("[paper]\nsize = '480 x 520 mm'\n" + acorn + "[[item]]\nname = 'book bag'\nshape = 'outline'\n" +
			"outline = ['0 x 40 mm', '300 x 0 mm', '380 x 40 mm', '340 x 420 mm', '0 x 420 mm']\nborder = '10 mm'\nfaces = ['front', 'back']\n" +
			"[[item.keep-clear]]\nname = 'eyelet'\nat = '20 x 60 mm'\nsize = '40 x 30 mm'\n" +
			"[[item.keep-clear]]\nname = 'pocket'\nface = 'front'\nat = '200 x 180 mm'\nsize = '90 x 110 mm'\n" +
			"[[item.pass]]\nblock = 'acorn'\ngap = '2 mm'\ncentre-across = 'print'\ncentre-down = 'print'\n" +
			"[[item.pass]]\nname = 'on the back'\nblock = 'acorn'\non = 'acorn'\nface = 'back'\noffset = '1 x 1 mm'\n"),
		"small sheets": read("[paper]\nsize = 'A6'\nmargin = '4 mm'\noverlap = '5 mm'\nreach = '15 mm'\n" + acorn +
			"[[item]]\nname = 'coaster'\nsize = '150 x 150 mm'\nborder = '10 mm'\n[[item.pass]]\nblock = 'acorn'\ngap = '1 mm'\n"),
		"one sheet": read("[paper]\nsize = 'one sheet'\nmargin = '10 mm'\n" + fern + cushion + fernPass),
		"roll":      read("[paper]\nsize = 'roll 610 mm'\nmargin = '5 mm'\n" + fern + strings.Replace(cushion, "50 x 50", "90 x 70", 1) + fernPass),
		"round": read("[[block]]\nname = 'pebble'\nshape = 'round'\nprint = '55 mm'\nwood = '60 x 60 mm'\n" +
			"[[item]]\nname = 'stool top'\nshape = 'round'\nsize = '360 mm'\nborder = '20 mm'\nhem = '10 mm'\n" +
			"[[item.pass]]\nblock = 'pebble'\ngap = '2 mm'\n"),
		"pieces": read("[printing]\nhand = 'left'\n" + wave + acorn + "[[item]]\nname = 'place mat'\nsize = '170 x 140 mm'\nborder = '12 mm'\nhem = '5 mm'\n" +
			"pieces = '2 x 3'\napart = '15 mm'\n[[item.keep-clear]]\nname = 'tab'\nat = '10 x 20 mm'\nsize = '30 x 15 mm'\n" +
			"[[item.pass]]\nblock = 'wave'\ngap = '2 mm'\nrepeat = 'brick'\n[[item.pass]]\nblock = 'acorn'\non = 'wave'\n"),
		"pieces side by side": read("[paper]\nextent = 'edges'\n" + acorn + "[[item]]\nname = 'coaster'\nsize = '11 cm x 105 mm'\nborder = '3 mm'\n" +
			"pieces = '4 x 3'\n[[item.pass]]\nblock = 'acorn'\ngap = '2 mm'\n"),
		"dabs": read("[printing]\npaint-cover = '90 ml/m2'\n[[paint]]\nname = 'moss'\nlooks = '#5f7a3a'\n" + fern + acorn + "inked = 0.5\n" + cushion + "quantity = 3\n" +
			"[[item.pass]]\nblocks = [['fern', 'acorn']]\ngap = '2 mm'\n" +
			"dabs = [{ colour = 'ochre', middle = '12 mm' }, { colour = 'a blue like the pond behind the mill', corners = '6 mm' }, { colour = 'moss' }]\n" +
			"[[item.pass]]\nname = 'over'\nblock = 'acorn'\nrepeat = 'one'\nover = true\ndabs = [{ colour = 'navy', edge = '5 mm' }]\n" +
			"[[item.colourway]]\nname = 'evening'\nswap = { moss = 'ochre' }\n"),
		"six-sided": read("[[block]]\nname = 'pebble'\nshape = 'hexagon'\nprint = '52 x 60 mm'\n" + cushion +
			"[[item.pass]]\nblock = 'pebble'\ngap = '2 mm'\n"),
		"no overlap": read("[paper]\nsize = 'A5'\noverlap = '0 mm'\n" + acorn +
			"[[item]]\nname = 'napkin'\nsize = '25 x 25 cm'\nborder = '10 mm'\n[[item.pass]]\nblock = 'acorn'\ngap = '2 mm'\n"),
		"brick":     read(wave + cushion + "[[item.pass]]\nblock = 'wave'\ngap = '1 mm to 3 mm'\nrepeat = 'brick'\nstep = '1/3'\nturns = ['0 180']\n"),
		"half-drop": read(fern + cushion + "[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\nrepeat = 'half-drop'\nturns = ['0 90', '270 180']\n"),
		"diagonal":  read(acorn + cushion + "[[item.pass]]\nblock = 'acorn'\ngap = '2 mm'\nrepeat = 'diagonal'\n"),
		"honeycomb": read("[[block]]\nname = 'cell'\nshape = 'hexagon'\nprint = '52 x 60 mm'\n" + cushion +
			"[[item.pass]]\nblock = 'cell'\ngap = '2 mm'\nrepeat = 'honeycomb'\n"),
		"frame": read("[printing]\nhand = 'left'\n" + acorn + cushion + "[[item.pass]]\nblock = 'acorn'\ngap = '2 mm'\nrepeat = 'frame'\ntops = 'in'\n"),
		"rings": read(acorn + "[[item]]\nname = 'stool top'\nshape = 'round'\nsize = '34 cm'\nborder = '15 mm'\n" +
			"[[item.pass]]\nblock = 'acorn'\ngap = '3 mm'\nrepeat = 'rings'\n"),
		"seated": read(fern + acorn + cushion + fernPass + "[[item.pass]]\nblock = 'acorn'\nbetween = 'fern'\nopen-edges = true\n" +
			"[[item.pass]]\nname = 'seed'\nblock = 'acorn'\non = 'fern'\noffset = '4 x -6 mm'\n"),
		"passes apart": read("[paper]\npasses = 'apart'\n" + fern + acorn + cushion + fernPass + "[[item.pass]]\nblock = 'acorn'\nbetween = 'fern'\n"),
		"outlines": read("[[block]]\nname = 'leaf'\nshape = 'outline'\noutline = ['0 x 0 mm', '50 x 10 mm', '40 x 60 mm', '20 x 25 mm']\n" +
			"[[item]]\nname = 'pennant'\nshape = 'outline'\noutline = ['0 x 0 mm', '400 x 0 mm', '200 x 500 mm']\nborder = '15 mm'\n" +
			"[[item.pass]]\nblock = 'leaf'\ngap = '2 mm'\nturns = ['0 180']\n"),
		"drum": read(wave + "[[item]]\nname = 'lampshade'\nshape = 'drum'\ndiameter = '20 cm'\nheight = '18 cm'\nlap = '15 mm'\nborder = '10 mm'\n" +
			"[[item.pass]]\nblock = 'wave'\ngap = '1 mm'\nrepeat = 'brick'\n"),
		"cone": read(acorn + "[[item]]\nname = 'lampshade'\nshape = 'cone'\ntop = '15 cm'\nbottom = '25 cm'\nheight = '18 cm'\nlap = '15 mm'\nborder = '10 mm'\n" +
			"[[item.pass]]\nblock = 'acorn'\ngap = '2 mm'\n"),
		"wide lap": read("[[block]]\nname = 'wave'\nprint = '60 x 40 mm'\n[[item]]\nname = 'bench runner'\nsize = '40 x 40 cm'\nborder = '10 mm'\n" +
			"[[item.pass]]\nblock = 'wave'\nlap = '8 mm'\n"),
		"brick that laps": read("[[block]]\nname = 'wave'\nprint = '60 x 40 mm'\n[[item]]\nname = 'bench runner'\nsize = '40 x 40 cm'\nborder = '10 mm'\n" +
			"[[item.pass]]\nblock = 'wave'\nlap = '1 mm'\nrepeat = 'brick'\n"),
		"diagonal that laps": read("[[block]]\nname = 'wave'\nprint = '60 x 60 mm'\n[[item]]\nname = 'bench runner'\nsize = '40 x 40 cm'\nborder = '10 mm'\n" +
			"[[item.pass]]\nblock = 'wave'\nlap = '1 mm'\nrepeat = 'diagonal'\n"),
		"pebbles that interlock": read("[[block]]\nname = 'pebble'\nshape = 'round'\nprint = '60 mm'\n" +
			"[[item]]\nname = 'floor cushion'\nsize = '40 x 40 cm'\nborder = '10 mm'\n[[item.pass]]\nblock = 'pebble'\ngap = '1 mm'\nrepeat = 'honeycomb'\n"),
		"brick to the hundredth": read("[[block]]\nname = 'acorn'\nprint = '40 x 40 mm'\n" + cushion + "[[item.pass]]\nblock = 'acorn'\ngap = '1.01 mm'\nrepeat = 'brick'\n"),
		"wide diagonal": read("[[block]]\nname = 'acorn'\nprint = '40 x 40 mm'\n[[item]]\nname = 'bench runner'\nsize = '600 x 300 mm'\nborder = '10 mm'\n" +
			"[[item.pass]]\nblock = 'acorn'\ngap = '2 mm'\nrepeat = 'diagonal'\n"),
		"frame of a wide block": read(wave + "[[item]]\nname = 'table mat'\nsize = '500 x 400 mm'\nborder = '20 mm'\n" +
			"[[item.pass]]\nblock = 'wave'\ngap = '2 mm'\nrepeat = 'frame'\n"),
		"drum with rows": read(wave + "[[item]]\nname = 'lampshade'\nshape = 'drum'\ndiameter = '16 cm'\nheight = '20 cm'\nlap = '10 mm'\nborder = '10 mm'\n" +
			"[[item.pass]]\nblock = 'wave'\ngap = '1 mm'\n"),
		"short reach": read("[paper]\nreach = '9 mm'\n" + wave + acorn + "[[item]]\nname = 'table mat'\nsize = '400 x 300 mm'\nborder = '20 mm'\n" +
			"[[item.pass]]\nblock = 'wave'\ngap = '5 mm'\n[[item.pass]]\nname = 'acorns'\nblock = 'acorn'\nbetween = 'wave'\n"),
		"long names": read("title = '" + name("Reading nook ") + "'\n[[block]]\nname = '" + name("W") + "'\nprint = '60 x 40 mm'\n" +
			"[[block]]\nname = '" + name("two acorns ") + "'\nprint = '30 x 30 mm'\n" +
			"[[item]]\nname = '" + name("Wide floor cushion ") + "'\nsize = '300 x 260 mm'\nborder = '20 mm'\n" +
			"[[item.keep-clear]]\nname = '" + name("pocket ") + "'\nat = '30 x 30 mm'\nsize = '50 x 40 mm'\n" +
			"[[item.pass]]\nname = '" + name("first ") + "'\nblock = '" + name("W") + "'\ngap = '1 mm'\n" +
			"[[item.pass]]\nname = '" + name("second ") + "'\nblock = '" + name("two acorns ") + "'\ngap = '31 mm'\n"),
	}
	return jobs
}
