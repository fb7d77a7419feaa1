import { Engine } from "./engine.js";
import { remember, rememberPictures } from "./memory.js";

// manyPrints is from how many prints on a letter typed changes the look at once and the order a little
// later.
const manyPrints = 400;

// The job on the page: its text and its pictures, and nothing else. Blanks, presses and drags are edits
// of the text, made by the program; what is typed meanwhile waits, the newest value of a blank only,
// and is kept on the device from the first key on.
class Job {
	text = "";
	edits = []; // asked for, not under way yet: {path, value}
	sent = []; // under way
	pictures = new Map(); // name -> bytes
	picked = { item: 0, face: 0, colourway: 0 };
	file = "untitled"; // what the job is saved as
	name = ""; // of the file that was opened
	width = 600; // of the picture, in pixels
	past = []; // texts to go back to
	typedAt = -1e9; // when a letter was typed last
	version = 0; // counts texts that did not come from an edit
	others = 0; // counts jobs begun or opened
	listeners = [];
	say = () => {}; // says what cannot be done, where it is seen
	shown = null; // the text that state is of
	state = null; // what the program last said of the text
	good = null; // what it said last when nothing was wrong

	constructor() {
		const known = () => [
			{ call: "Name", args: { name: this.name } },
			...[...this.pictures].map(([name, bytes]) => ({ call: "Picture", args: { name }, files: [bytes] })),
		];
		this.quick = new Engine(known);
		this.slow = new Engine(known);
	}

	// tell hands a file or a name to both programs, now and whenever one is begun anew.
	tell(call, args, files) {
		for (const engine of [this.quick, this.slow]) engine.also({ call, args, files });
	}

	// called names the file that the job is of; "" for none.
	called(name) {
		this.name = name;
		this.tell("Name", { name });
	}

	// other takes another job, of a file or none.
	other(text, name) {
		this.picked = { item: 0, face: 0, colourway: 0 };
		this.others++;
		this.called(name);
		this.write(text);
	}

	// give adds a picture that blocks may name.
	give(name, bytes) {
		this.pictures.set(name, bytes);
		rememberPictures(this.pictures);
		this.tell("Picture", { name }, [bytes]);
	}

	changed() {
		for (const l of this.listeners) l(this);
	}

	keep() {
		remember({ text: this.text, edits: [...this.sent, ...this.edits], picked: this.picked, name: this.name });
	}

	// before makes the text as it is one to go back to; runs of edits of one value count as one.
	before(what) {
		const now = performance.now();
		if (what && what === this.lastWhat && now - this.lastTime < 4000) {
			this.lastTime = now;
			return;
		}
		[this.lastWhat, this.lastTime] = [what, now];
		if (this.past.at(-1) !== this.text && this.text) this.past.push(this.text);
		if (this.past.length > 200) this.past.shift();
	}

	// edit puts values into the job.
	edit(edits, what = edits.map((e) => e.path).join()) {
		this.before(what);
		for (const e of edits) {
			this.edits = this.edits.filter((o) => o.path !== e.path || o.call !== e.call);
			this.edits.push(e);
		}
		this.keep();
		this.run();
	}

	// write takes a whole new text.
	write(text, what = "") {
		this.before(what);
		this.text = text;
		this.edits = [];
		this.sent = [];
		this.version++;
		this.keep();
		this.run();
	}

	takeBack() {
		const text = this.past.pop();
		if (text === undefined) return;
		this.lastWhat = "";
		this.text = text;
		this.edits = [];
		this.sent = [];
		this.version++;
		this.keep();
		this.run();
	}

	pick(picked) {
		Object.assign(this.picked, picked);
		this.keep();
		this.run();
	}

	// run works the text out until nothing newer is there.
	async run() {
		if (this.running) {
			this.again = true;
			// What takes long gives way to what is newer.
			if (performance.now() - this.since > 1500) this.quick.stop();
			return;
		}
		this.running = true;
		document.documentElement.dataset.busy = "yes";
		do {
			this.again = false;
			this.since = performance.now();
			await this.#once();
		} while (this.again || this.edits.length > 0);
		this.running = false;
		this.#settled();
	}

	// take shows what the program says. That something is wrong can wait until typing rests: half a
	// word is seldom a good one.
	#take(state, text) {
		clearTimeout(this.waiting);
		const rest = 700 - (performance.now() - this.typedAt);
		if (!state.good && this.state && rest > 0) {
			this.waiting = setTimeout(() => this.#show(state, text), rest);
			return;
		}
		this.#show(state, text);
	}

	#show(state, text) {
		this.waiting = undefined;
		this.shown = text;
		this.state = state;
		if (state.good) this.good = state;
		this.changed();
		if (!this.running) this.#settled();
	}

	// settled marks the page as one that shows what was asked for last.
	#settled() {
		if (this.waiting === undefined) delete document.documentElement.dataset.busy;
	}

	// typed says that what changes now comes letter by letter.
	typed() {
		this.typedAt = performance.now();
	}

	// later draws the order of many prints once nothing newer is asked for.
	#later(text) {
		clearTimeout(this.laterTimer);
		this.laterTimer = setTimeout(async () => {
			if (this.running || text !== this.text) return;
			try {
				const { order } = await this.quick.call("Look", { text, picked: { ...this.picked, only: "order" }, width: this.width });
				if (this.running || text !== this.text || this.state.good !== true) return;
				this.state.order = order;
				this.changed();
			} catch {
				// What was newer is on its way, and draws its own.
			}
		}, 250);
	}

	// edited returns the text with edits made. Those that cannot be made are said, and change nothing.
	async #edited(edits) {
		try {
			return (await this.quick.call("Edit", { text: this.text, edits })).text;
		} catch (trouble) {
			if (trouble.kind !== "refused") throw trouble;
			this.say(trouble.message);
			return this.text;
		}
	}

	async #once() {
		const version = this.version;
		try {
			if (this.edits.length > 0) {
				[this.sent, this.edits] = [this.edits, []];
				const text = await this.#edited(this.sent);
				if (this.version !== version) return;
				this.text = text;
				this.sent = [];
				this.keep();
				if (this.edits.length > 0) return; // newer ones are there already
			}
			const only = this.many ? "look" : "";
			const state = await this.quick.call("Look", { text: this.text, picked: { ...this.picked, only }, width: this.width });
			if (state.file) this.file = state.file;
			if (this.version !== version) return;
			if (state.good) this.many = state.picture?.prints > manyPrints;
			if (state.good && only) {
				state.order = this.good?.order;
				this.#later(this.text);
			}
			this.#take(state, this.text);
		} catch (trouble) {
			if (trouble.kind === "stopped" || this.version !== version) {
				this.edits = [...this.sent.filter((s) => !this.edits.some((e) => e.path === s.path)), ...this.edits];
				this.sent = [];
				this.again = true;
				return;
			}
			this.sent = [];
			clearTimeout(this.waiting);
			this.#show({ ...this.state, good: false, problems: [{ path: "", line: 0, text: explain(trouble) }] }, this.text);
		}
	}
}

// explain says in plain words why the program has no answer.
export function explain(trouble) {
	switch (trouble.kind) {
	case "slow":
		return "This takes too long to work out, and was stopped. Nothing you typed is lost. Fewer prints would do it: a smaller cloth, a larger block, or fewer things in one job.";
	case "ended":
		return "Working this out failed and was begun anew. Nothing you typed is lost. Take the last change back, or change it.";
	case "failed":
		return "This browser cannot run the page: it is too old, or its settings forbid it. A newer browser will do.";
	}
	return trouble.message;
}

export const job = new Job();
