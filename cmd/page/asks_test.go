package main

import (
	"encoding/json"
	"strings"
	"testing"
)

// TestEverythingAskedFor presses, on each of the beginnings, all that can be said more, one at a time:
// the job goes on working, and there is a new blank or thing to show for it.
func TestEverythingAskedFor(t *testing.T) {
	b := open(t, 1280, 800)
	if b == nil {
		return
	}
	for _, start := range []string{"a cushion", "a towel", "a bag", "a lampshade"} {
		found := get[string](b, `(async () => {
			const rest = (ms) => new Promise((done) => setTimeout(done, ms));
			const settled = async () => { do await rest(30); while (document.documentElement.dataset.busy); };
			const named = (text) => [...document.querySelectorAll("button")].find((e) => e.textContent === text);
			const begin = async () => {
				const text = document.getElementById("text");
				text.value = ""; // until the program's answer is shown
				named("`+start+`").click();
				while (text.value === "") await rest(10);
				await settled();
				for (let i = 0; i < 6; i++) {
					const fold = [...document.querySelectorAll(".said [aria-expanded=false], .said-of-paper [aria-expanded=false]")][0];
					if (!fold) break;
					fold.click();
					await rest(20);
				}
			};
			await begin();
			const asks = [...new Set([...document.querySelectorAll(".asks .ask")].map((e) => e.textContent))];
			const out = [];
			for (const text of asks) {
				await begin();
				const before = document.querySelectorAll("main [data-path], .picture-of").length;
				named(text).click();
				await rest(150);
				await settled();
				await rest(50);
				await settled();
				out.push({ text, answer: document.querySelector(".answer").innerText, more: document.querySelectorAll("main [data-path], .picture-of").length - before, word: document.querySelector(".begin .word").textContent });
			}
			return JSON.stringify(out);
		})()`)
		var all []struct {
			Text, Answer, Word string
			More               int
		}
		if err := json.Unmarshal([]byte(found), &all); err != nil {
			t.Fatal(err)
		}
		if len(all) < 12 {
			t.Errorf("%s: only %d things can be said more: %v", start, len(all), all)
		}
		for _, a := range all {
			// A cloth that is moved along has to be the same in every stretch, which not every one is.
			stretched := strings.Contains(a.Answer, "stretch") && a.Text == "a cloth longer than the table"
			if strings.HasPrefix(a.Answer, "Not yet") && !stretched || a.Word != "" {
				t.Errorf("%s, %q: %s %s", start, a.Text, a.Answer, a.Word)
			}
			// One that takes the place of another has as many blanks as that.
			if a.More <= 0 && a.Text != "prints that lap" {
				t.Errorf("%s, %q: nothing is there to show for it", start, a.Text)
			}
		}
	}
}
