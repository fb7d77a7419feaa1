//go:build js && wasm

// Worker is the page's Go side as a browser runs it: package side's functions, called by name. Only
// this file knows that there is a browser.
//
// The page's script finds one function in its global scope,
//
//	underlay(call, args, files) → {result, problem, made}
//
// where args and result are JSON, files and made are lists of Uint8Array, and problem is a plain
// sentence in place of a result.
package main

import (
	"fmt"
	"runtime/debug"
	"syscall/js"

	"underlay/cmd/page/side"
)

func main() {
	// A call leaves little behind, and a worker has a core to itself: collecting seldom is worth the
	// memory.
	debug.SetGCPercent(400)
	s := side.New()
	js.Global().Set("underlay", js.FuncOf(func(_ js.Value, in []js.Value) any {
		answer := map[string]any{}
		result, made, err := call(s, in[0].String(), in[1].String(), files(in[2]))
		if err != nil {
			answer["problem"] = err.Error()
		} else {
			answer["result"] = string(result)
		}
		list := make([]any, len(made))
		for i, m := range made {
			list[i] = bytesOf(m)
		}
		answer["made"] = list
		return answer
	}))
	select {}
}

// call turns a fault of the program into a problem that is said: the page goes on with the next call.
func call(s *side.Side, name, args string, files [][]byte) (result []byte, made [][]byte, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = fmt.Errorf("this job met a fault of underlay itself (%v); take the last change back, and please tell its makers", fault)
		}
	}()
	return s.Call(name, []byte(args), files)
}

func files(list js.Value) [][]byte {
	all := make([][]byte, list.Length())
	for i := range all {
		all[i] = make([]byte, list.Index(i).Length())
		js.CopyBytesToGo(all[i], list.Index(i))
	}
	return all
}

func bytesOf(b []byte) js.Value {
	array := js.Global().Get("Uint8Array").New(len(b))
	js.CopyBytesToJS(array, b)
	return array
}
