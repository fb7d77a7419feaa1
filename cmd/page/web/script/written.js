import { after, byId, fill, make, press } from "./dom.js";
import { job } from "./job.js";

// The job as it is written: to read, and to change by hand.
const parts = {};

function build() {
	parts.title = make("h2", { id: "written-title" }, "The job as it is written");
	parts.words = make("p", { class: "quiet-words", id: "written-words" }, "All that stands above is this text, and it can say more than the sentences do. Change either, and the other follows.");
	parts.numbers = make("pre", { class: "numbers", "aria-hidden": "true" });
	parts.text = make("textarea", { id: "text", spellcheck: "false", autocapitalize: "off", autocomplete: "off", wrap: "off", "aria-label": "The job as it is written", "aria-describedby": "written-words" });
	parts.messages = make("ul", { class: "messages", id: "text-wrong" });
	parts.text.addEventListener("input", () => {
		job.typed();
		job.write(parts.text.value, "text");
	});
	parts.text.addEventListener("scroll", () => { parts.numbers.scrollTop = parts.text.scrollTop; });
	byId("written").append(parts.title, parts.words, parts.messages, make("div", { class: "sheet" }, parts.numbers, parts.text));
	addEventListener("go-to-line", (e) => goToLine(e.detail));
}

function goToLine(line) {
	const lines = parts.text.value.split("\n");
	const from = lines.slice(0, line - 1).reduce((n, l) => n + l.length + 1, 0);
	parts.text.focus();
	parts.text.setSelectionRange(from, from + (lines[line - 1] ?? "").length);
	parts.text.scrollTop = Math.max(0, (line - 4) * parseFloat(getComputedStyle(parts.text).lineHeight));
}

const number = after(60, (wrong) => {
	const lines = parts.text.value.split("\n").length;
	const bad = new Set(wrong.map((p) => p.line));
	parts.numbers.textContent = Array.from({ length: Math.min(lines, 5000) }, (_, i) => bad.has(i + 1) ? `! ${i + 1}` : i + 1).join("\n");
	parts.text.rows = Math.min(Math.max(lines + 1, 8), 40);
});

export function tellText() {
	if (!parts.text) build();
	if (parts.text.value !== job.text) {
		const { selectionStart, selectionEnd, scrollTop } = parts.text;
		parts.text.value = job.text;
		if (document.activeElement === parts.text) {
			parts.text.setSelectionRange(selectionStart, selectionEnd);
			parts.text.scrollTop = scrollTop;
		}
	}
	const wrong = job.state.problems ?? [];
	fill(parts.messages, wrong.slice(0, 50).map((p) => make("li", {}, p.line ? press(`line ${p.line}`, () => goToLine(p.line), { class: "ask" }) : null, p.line ? ": " : "", p.text)));
	parts.messages.hidden = wrong.length === 0;
	if (wrong.length) {
		parts.text.setAttribute("aria-invalid", "true");
		parts.text.setAttribute("aria-describedby", "text-wrong");
	} else {
		parts.text.removeAttribute("aria-invalid");
		parts.text.setAttribute("aria-describedby", "written-words");
	}
	number(wrong);
}
