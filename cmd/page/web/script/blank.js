import { make, say } from "./dom.js";
import { phrase } from "./sentences.js";

let count = 0;

// A Blank is a place in a sentence to fill in: one key of the job, an input or, where the key is one of
// a few words, a select. It is as wide as what is in it.
export class Blank {
	constructor(path, label, change) {
		this.path = path;
		this.label = label;
		this.change = change;
		this.id = `blank-${++count}`;
		this.element = make("span", { class: "blank" });
	}

	// update shows a value; thing is the kind of thing whose key it is. What is being typed stays.
	update(value, thing) {
		const words = value.words?.length ? value.words : null;
		if (!this.field || this.choosing !== Boolean(words)) this.#build(Boolean(words));
		if (words) this.#options(words, value, thing);
		const text = value.given || !words ? value.text : (value.text || value.usual || words[0]);
		const typing = document.activeElement === this.field && !words && this.typed === this.field.value;
		if (!typing && this.field.value !== text) this.field.value = text;
		if (!words) {
			this.field.placeholder = value.usual || "…";
			this.field.size = Math.max(2, (this.field.value || this.field.placeholder).length);
			this.#suggest(value.suggests ?? []);
		}
	}

	#suggest(words) {
		if (words.length === 0 || this.list) return;
		this.list = make("datalist", { id: `${this.id}-often` }, ...words.map((w) => make("option", { value: w })));
		this.field.setAttribute("list", this.list.id);
		this.element.append(this.list);
	}

	// wrong ties messages to the blank; none is the id of "".
	wrong(messages) {
		if (messages) {
			this.field.setAttribute("aria-invalid", "true");
			this.field.setAttribute("aria-describedby", messages);
		} else {
			this.field.removeAttribute("aria-invalid");
			this.field.removeAttribute("aria-describedby");
		}
	}

	#build(choosing) {
		this.choosing = choosing;
		const had = document.activeElement === this.field;
		this.field = choosing ? make("select", { id: this.id }) : make("input", { id: this.id, type: "text", autocomplete: "off", autocapitalize: "off", spellcheck: "false", enterkeyhint: "done" });
		this.field.addEventListener(choosing ? "change" : "input", () => {
			this.typed = this.field.value;
			if (!choosing) this.field.size = Math.max(2, (this.typed || this.field.placeholder).length);
			// One that is emptied is most likely about to be typed anew: it goes when it is left so.
			if (choosing || this.typed.trim() !== "") this.change(this.path, this.typed, choosing);
		});
		if (!choosing) {
			this.field.addEventListener("change", () => {
				if (this.field.value.trim() === "") this.change(this.path, "", false);
			});
		}
		this.field.dataset.path = this.path;
		this.element.replaceChildren(make("label", { class: "unseen", for: this.id }, this.label), this.field);
		if (had) this.field.focus();
	}

	#options(words, value, thing) {
		const key = this.path.replace(/^(item\.\d+\.(pass\.\d+\.|keep-clear\.\d+\.)?|block\.\d+\.|paint\.\d+\.)/, "");
		const all = value.text && !words.includes(value.text) ? [value.text, ...words] : words;
		all.forEach((word, i) => {
			const option = this.field.options[i] ?? this.field.appendChild(make("option"));
			option.value = word;
			say(option, phrase(thing, key, word));
		});
		while (this.field.options.length > all.length) this.field.lastChild.remove();
	}
}
