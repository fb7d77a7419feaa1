import { Blank } from "./blank.js";
import { byId, fill, make, press, say } from "./dom.js";
import { pictureOf } from "./blockpicture.js";
import { explain, job } from "./job.js";
import { tellNow } from "./live.js";
import { ofBlock, ofColourway, ofDab, ofItem, ofPass, ofPaper, ofWork, ofZone } from "./sentences.js";

// The sentences of the job, made once each and kept by their place, so that the caret stays where it is.
const made = new Map();
const asked = new Set(); // sentences asked for, by path and id
let used; // the keys of made that this round uses

function once(key, build) {
	used.add(key);
	if (!made.has(key)) made.set(key, build());
	return made.get(key);
}

function change(path, value, choose) {
	if (value === "") asked.clear();
	else if (!choose) job.typed();
	job.edit([{ path, value, choose }]);
}

// Part is a thing of the job and its values: the job itself, an item, a pass.
class Part {
	constructor(path, thing, values) {
		[this.path, this.thing] = [path, thing];
		this.values = new Map(values.map((v) => [v.path, v]));
	}

	at(key) {
		return this.values.get(this.path ? `${this.path}.${key}` : key);
	}

	given(key) {
		return Boolean(this.at(key)?.given);
	}
}

const keysOf = (sentence) => [...sentence.text.matchAll(/\{([^|}]+)\|/g)].map((m) => m[1]);
const listed = (text) => text ? text.split(" ") : [];

// possible tells whether a sentence makes sense of a part, shown whether it is to be read.
function possible(part, s) {
	return keysOf(s).some((k) => part.at(k));
}

function shown(part, s) {
	if (!possible(part, s)) return false;
	const given = keysOf(s).some((k) => part.given(k));
	if (given || asked.has(part.path + s.id)) return true;
	return Boolean(s.always) && !listed(s.unless).some((k) => part.given(k));
}

// pieces returns a sentence's text and blanks as nodes.
function pieces(part, s) {
	return once(`${part.path}:${s.id}`, () => s.text.split(/(\{[^}]+\})/).filter(Boolean).map((piece) => {
		if (!piece.startsWith("{")) return document.createTextNode(piece);
		const [key, label] = piece.slice(1, -1).split("|");
		return new Blank(part.path ? `${part.path}.${key}` : key, label, change);
	}));
}

// placed returns the nodes of a sentence as the job has it now.
function placed(part, s, wrong) {
	return pieces(part, s).map((piece) => {
		if (!(piece instanceof Blank)) return piece;
		const value = part.at(piece.path.slice(part.path ? part.path.length + 1 : 0)) ?? { path: piece.path, text: "", usual: "" };
		piece.update(value, part.thing);
		wrong.blank(piece);
		return piece.element;
	});
}

// Wrong gathers the messages of the blanks of one paragraph.
class Wrong {
	constructor(problems) {
		this.problems = problems;
		this.messages = [];
	}

	blank(piece) {
		const own = this.problems.filter((p) => p.path === piece.path || p.path.startsWith(piece.path + "."));
		piece.wrong(own.length > 0 ? `${piece.id}-wrong` : "");
		if (own.length === 0) return;
		for (const p of own) p.shown = true;
		const message = once(`wrong:${piece.path}`, () => make("p", { class: "wrong", id: `${piece.id}-wrong` }));
		message.id = `${piece.id}-wrong`;
		say(message, own.map((p) => p.text).join(" "));
		this.messages.push(message);
	}
}

// leave makes the words that take a sentence out again.
function leave(part, s) {
	return once(`leave:${part.path}:${s.id}`, () => {
		const button = press("leave out", () => {
			asked.delete(part.path + s.id);
			job.edit(keysOf(s).map((k) => ({ path: part.path ? `${part.path}.${k}` : k, value: "" })), "leave");
			tellNow("Left out.");
			job.changed();
		}, { class: "quiet", "aria-label": `leave out: ${s.ask}` });
		return button;
	});
}

// tellPart returns the paragraphs of a part: sentences that go on, one after the other, each ending
// where it ends, and what is wrong right below.
function tellPart(part, sentences, problems, lead = []) {
	const paragraphs = [];
	let now = null;
	const begin = (key) => {
		now = { key, nodes: [], leaves: [], wrong: new Wrong(problems) };
		paragraphs.push(now);
	};
	if (lead.length > 0) {
		begin("lead");
		now.nodes.push(...lead);
	}
	for (const s of sentences) {
		if (!shown(part, s)) continue;
		if (!s.goesOn || !now) begin(s.id);
		now.nodes.push(...placed(part, s, now.wrong));
		if (s.ask && !s.always && !s.goesOn) now.leaves.push(document.createTextNode(" "), leave(part, s));
	}
	return paragraphs.flatMap((p) => {
		const key = `${part.path}:${p.key}`;
		const element = once(`p:${key}`, () => make("p", { class: "sentence" }));
		const stop = p.nodes.at(-1).textContent.endsWith(".") && p.nodes.at(-1).nodeType === Node.TEXT_NODE ? [] : [once(`stop:${key}`, () => document.createTextNode("."))];
		fill(element, [...p.nodes, ...stop, ...p.leaves]);
		return [element, ...p.wrong.messages];
	});
}

// asks returns the words with which more can be said of a part: the usual ones, and on a press all.
function asks(part, sentences, more = []) {
	const open = sentences.filter((s) => s.ask && possible(part, s) && !shown(part, s));
	const button = (s) => once(`ask:${part.path}:${s.id}`, () => press(s.ask, () => askFor(part.path, s), { class: "ask" }));
	const usual = [...open.filter((s) => s.usual).map(button), ...more.filter((m) => m.usual).map((m) => m.button)];
	const rest = [...open.filter((s) => !s.usual).map(button), ...more.filter((m) => !m.usual).map((m) => m.button)];
	if (usual.length + rest.length === 0) return null;
	const key = `asks:${part.path}:${part.thing}`;
	const list = once(key, () => make("p", { class: "asks" }, make("span", {}, "Say more:")));
	const all = once(`${key}:all`, () => press("", () => {
		if (unfolded.has(key)) unfolded.delete(key);
		else unfolded.add(key);
		job.changed();
	}, { class: "quiet" }));
	const wide = unfolded.has(key) || rest.length < 2;
	say(all, wide ? "less" : `${usual.length ? "and " : ""}${rest.length} more things`);
	all.setAttribute("aria-expanded", String(wide));
	fill(list, [list.firstChild, ...usual, ...(wide ? rest : []), rest.length >= 2 && all]);
	return list;
}

const unfolded = new Set(); // lists of asks that are shown whole

function askFor(path, s) {
	asked.add(path + s.id);
	const at = (key) => path ? `${path}.${key}` : key;
	const edits = Object.entries(s.start ?? {}).map(([k, value]) => ({ path: at(k), value, choose: true }));
	if (edits.length > 0) job.edit(edits, "ask");
	wanted = at(keysOf(s)[0]);
	job.changed();
}

let wanted = ""; // the blank to go to once it is there

// goTo puts the caret into the blank of a path; false where there is none.
export function goTo(path) {
	const field = [...document.querySelectorAll("[data-path]")].find((f) => f.dataset.path === path);
	if (!field) return false;
	field.focus();
	field.select?.();
	return true;
}

export function goToNext(path) {
	wanted = path;
}

// add puts a new block, item, pass, place or the like into the job, and goes to it.
async function add(what, path, then = "name") {
	try {
		const added = await job.quick.call("Add", { text: job.text, what, path });
		job.write(added.text);
		wanted = then ? `${added.path}.${then}` : added.path;
		tellNow("Added.");
		return added.path;
	} catch (trouble) {
		job.say(explain(trouble));
		return "";
	}
}

// addPass prints one block more on an item: one that is not on it yet, carved for it if need be.
async function addPass(path) {
	const item = job.state.values.items.find((i) => i.path === path);
	const used = new Set(item.passes.map((p) => p.block));
	if (job.state.values.blocks.every((b) => used.has(b.name)) && !await add("block", "", "")) return;
	await add("pass", path, "block");
}

async function remove(path) {
	try {
		const { text } = await job.quick.call("Remove", { text: job.text, path });
		job.write(text);
		tellNow("Left out. Take back brings it again.");
	} catch (trouble) {
		job.say(explain(trouble));
	}
}

const more = (key, text, action, usual = false) => ({ usual, button: once(`more:${key}`, () => press(text, action, { class: "ask" })) });

// section is a part of the page with a heading of its own.
function section(key, title, nodes, kind = "") {
	const element = once(`section:${key}`, () => make("div", { role: "group", class: `part ${kind}` }, make("h3", { id: `title-${key.replaceAll(".", "-")}` })));
	const heading = element.firstChild;
	say(heading, title);
	element.setAttribute("aria-labelledby", heading.id);
	fill(element, [heading, ...nodes]);
	return element;
}

const leaveOut = (path, text) => once(`remove:${path}`, () => press(text, () => remove(path), { class: "quiet" }));

function tellBlock(block, problems, lead) {
	const part = new Part(block.path, "block", block.values);
	const pictured = part.given("picture") || asked.has(`${block.path}picture`);
	return [...tellPart(part, ofBlock, problems, lead), pictured && pictureOf(block, part, once, problems)];
}

// looks says how the colours of a pass look on paper and screen.
function looks(pass, colours) {
	const said = [...pass.values.filter((v) => v.key.startsWith("colours")), ...pass.dabs.flatMap((d) => d.values)].map((v) => v.text).join();
	const names = new Set(said.split(/[^\p{L}\p{N} -]+/u).map((name) => name.trim()));
	const own = colours.filter((c) => names.has(c.name));
	if (own.length === 0) return null;
	const element = once(`looks:${pass.path}`, () => make("p", { class: "sentence small" }));
	const nodes = [document.createTextNode("On paper and screen ")];
	own.forEach((c, i) => {
		const well = once(`look:${pass.path}:${c.name}`, () => make("input", { type: "color", "aria-label": `how ${c.name} looks`, onchange: (e) => look(c.name, e.target.value), oninput: (e) => look(c.name, e.target.value) }));
		if (document.activeElement !== well) well.value = c.looks;
		const before = i === 0 ? "" : i === own.length - 1 ? " and " : ", ";
		nodes.push(document.createTextNode(`${before}${c.name} is ${c.known ? "" : "grey until you choose: "}`), well);
	});
	nodes.push(document.createTextNode("."));
	element.replaceChildren(...nodes);
	return element;
}

async function look(name, colour) {
	const known = job.state.colours.find((c) => c.name === name);
	if (known?.path) {
		job.edit([{ path: `${known.path}.looks`, value: colour }]);
		return;
	}
	const path = await add("paint", "", "");
	wanted = "";
	if (path) job.edit([{ path: `${path}.name`, value: name }, { path: `${path}.looks`, value: colour }], "look");
}

function tellPass(item, pass, n, state, told) {
	const part = new Part(pass.path, "pass", pass.values);
	const block = state.values.blocks.find((b) => b.name === pass.block);
	const nodes = [];
	const sentence = { id: "block", always: true, text: n === 0 ? "I print it with the block {block|the block}" : "Then I print the block {block|the block}" };
	const wrong = new Wrong(state.problems);
	if (part.at("block") && !part.given("blocks")) {
		const lead = placed(part, sentence, wrong);
		if (block && !told.has(block.path)) {
			told.add(block.path);
			nodes.push(...tellBlock(block, state.problems, lead), ...wrong.messages);
		} else {
			const element = once(`p:${pass.path}:block`, () => make("p", { class: "sentence" }));
			fill(element, [...lead, once(`stop:${pass.path}`, () => document.createTextNode("."))]);
			nodes.push(element, ...wrong.messages);
		}
	}
	const dabs = pass.dabs.flatMap((d) => [...tellPart(new Part(d.path, "dab", d.values), ofDab, state.problems), leaveOut(d.path, "leave this colour out")]);
	nodes.push(...tellPart(part, ofPass, state.problems), ...dabs, looks(pass, state.colours ?? []));
	const blockPart = block && new Part(block.path, "block", block.values);
	const buttons = [];
	if (pass.dabs.length > 0) buttons.push(more(`dab:${pass.path}`, "one colour more to dab", () => add("dab", pass.path, "colour"), true));
	else if (pass.dabs.length === 0 && part.at("colours")) buttons.push(more(`dab:${pass.path}`, "colours on parts of the block", () => add("dab", pass.path, "colour")));
	if (block && !blockPart.given("picture") && !asked.has(`${block.path}picture`)) {
		buttons.push(more(`picture:${block.path}:${pass.path}`, "a picture of its print", () => {
			asked.add(`${block.path}picture`);
			job.changed();
		}, true));
	}
	if (part.at("at") !== undefined) buttons.push(more(`place:${pass.path}`, "another place", () => add("place", pass.path), true));
	buttons.push(
		more(`block:${pass.path}`, "another block for it", () => newBlock(pass.path)),
		...(blockPart ? ofBlock.filter((s) => s.ask && possible(blockPart, s) && !shown(blockPart, s)).map((s) => ({ usual: s.usual, button: once(`ask:${block.path}:${s.id}:${pass.path}`, () => press(s.ask, () => askFor(block.path, s), { class: "ask" })) })) : []),
	);
	nodes.push(asks(part, ofPass, buttons));
	if (item.passes.length > 1) nodes.push(leaveOut(pass.path, "leave this block out"));
	return section(pass.path, n === 0 ? "The block" : `Block ${n + 1}`, nodes);
}

// newBlock carves another block for a pass.
async function newBlock(pass) {
	const block = await add("block", "", "print");
	if (!block) return;
	const { values } = await job.quick.call("Look", { text: job.text, picked: job.picked, width: 100 });
	job.edit([{ path: `${pass}.block`, value: values.blocks.find((b) => b.path === block).name, choose: true }], "new block");
}

function tellItem(item, i, state, told) {
	const part = new Part(item.path, "item", item.values);
	const zones = item.zones.map((z) => section(z.path, "Kept clear", [
		...tellPart(new Part(z.path, "zone", z.values), ofZone, state.problems),
		asks(new Part(z.path, "zone", z.values), ofZone),
		leaveOut(z.path, "leave it out"),
	], "minor"));
	const colourways = item.colourways.map((c) => section(c.path, "Other colours", [
		...tellPart(new Part(c.path, "colourway", c.values), ofColourway, state.problems),
		leaveOut(c.path, "leave it out"),
	], "minor"));
	const cloth = section(item.path, ["drum", "cone"].includes(item.shape) ? "The shade" : "The cloth", [
		...tellPart(part, ofItem, state.problems),
		...zones, ...colourways,
		asks(part, ofItem, [
			more(`zone:${item.path}`, "a place to keep clear", () => add("zone", item.path), true),
			more(`colourway:${item.path}`, "other colours for some of them", () => add("colourway", item.path)),
		]),
		state.values.items.length > 1 && leaveOut(item.path, "leave this cloth out"),
	]);
	const passes = item.passes.map((p, n) => tellPass(item, p, n, state, told));
	const then = more(`pass:${item.path}`, item.passes.length ? "then a second block" : "and the block I print it with", () => addPass(item.path));
	say(then.button, item.passes.length === 0 ? "and the block I print it with" : item.passes.length === 1 ? "then a second block" : "then another block");
	const group = once(`item:${item.path}`, () => make("div", { role: "group", class: "item" }, make("h2")));
	say(group.firstChild, item.name || "Something to print on");
	group.setAttribute("aria-label", item.name || "something to print on");
	fill(group, [group.firstChild, cloth, ...passes, once(`then:${item.path}`, () => make("p", { class: "asks" }, then.button))]);
	group.onfocusin = () => {
		if (job.picked.item !== i) job.pick({ item: i, face: 0, colourway: 0 });
	};
	return group;
}

let told = 0; // the job, by job.others, whose sentences are shown

// tellJob writes the sentences of the job anew, those at the papers too.
export function tellJob(state) {
	used = new Set();
	if (told !== job.others) asked.clear();
	told = job.others;
	const top = new Part("", "job", state.values.values);
	const shownBlocks = new Set();
	const title = { id: "title", always: true, text: "{title|the name of this job}" };
	const heading = once("title", () => make("p", { class: "title" }));
	const wrong = new Wrong(state.problems);
	fill(heading, placed(top, title, wrong));
	const items = state.values.items.map((item, i) => tellItem(item, i, state, shownBlocks));
	const spare = state.values.blocks.filter((b) => !shownBlocks.has(b.path)).map((b) => section(b.path, "A block that waits", [
		...tellBlock(b, state.problems, [once(`spare:${b.path}`, () => document.createTextNode(""))]),
		leaveOut(b.path, "leave it out"),
	], "minor"));
	for (const b of state.values.blocks) if (!shownBlocks.has(b.path)) say(once(`spare:${b.path}`, () => document.createTextNode("")), `The block ${b.name}`);
	const work = section("work", "How I work", [
		...tellPart(top, ofWork, state.problems),
		asks(top, ofWork, [more("item", "another thing to print on", () => add("item", ""), true)]),
	]);
	fill(byId("said"), [heading, ...wrong.messages, ...items, ...spare, work]);
	const paper = [...tellPart(top, ofPaper, state.problems), asks(new Part("", "paper", state.values.values), ofPaper)];
	for (const [key] of made) if (!used.has(key)) made.delete(key);
	if (wanted && goTo(wanted)) wanted = "";
	return paper;
}
