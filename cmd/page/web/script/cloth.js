import { byId, fill, make, press, say } from "./dom.js";
import { handles } from "./drag.js";
import { job } from "./job.js";
import { alarm, tell } from "./live.js";
import { show } from "./picture.js";
import { goTo } from "./said.js";

// The cloth as the job has it now: the answer, the pictures, what one more print would take.
const parts = {};

function build() {
	parts.answer = make("div", { class: "answer" });
	parts.which = make("div", { class: "which" });
	parts.look = figure("As it will look");
	parts.stands = figure("As it will stand");
	parts.stands.figure.classList.add("stands");
	parts.order = figure("The order of printing");
	parts.words = make("p", { class: "unseen", id: "picture-words" });
	parts.look.host.setAttribute("aria-describedby", "picture-words");
	parts.pictures = make("div", { class: "pictures" }, parts.look.figure, parts.stands.figure, parts.order.figure);
	parts.more = make("div", { class: "more" });
	parts.sheets = make("p", { class: "sheets", id: "sheets" });
	parts.on = make("p", {}, make("a", { href: "#papers", class: "go-on" }, "See the papers, and make the PDF"));
	byId("cloth").append(parts.answer, parts.which, parts.pictures, parts.words, parts.more, parts.sheets, parts.on);
	// Figures in a picture are as large as they are drawn for: it is drawn anew for another width.
	new ResizeObserver(() => {
		const width = parts.look.figure.clientWidth;
		if (width > 0 && Math.abs(width / job.width - 1) > 0.1) {
			job.width = width;
			job.run();
		}
	}).observe(parts.pictures);
	parts.now = make("a", { class: "now", href: "#cloth", hidden: true });
	document.body.append(parts.now);
	new IntersectionObserver(([e]) => {
		parts.now.hidden = e.isIntersecting || e.boundingClientRect.top < 0;
	}).observe(parts.answer);
}

function figure(title) {
	const host = make("div", { class: "picture", role: "img" });
	const over = make("div", { class: "over" });
	const frame = make("div", { class: "frame" }, host, over);
	return { host, over, frame, title, figure: make("figure", {}, make("figcaption", {}, title), frame) };
}

// buttons lets one of several be picked; with one there is nothing to pick.
function choice(label, names, now, pick) {
	if (!names || names.length < 2) return null;
	return make("p", { class: "choice", role: "group", "aria-label": label },
		...names.map((name, i) => press(name || "as it is", () => pick(i), { "aria-pressed": String(i === now), class: "pick" })));
}

export function tellCloth() {
	if (!parts.answer) build();
	const { state, good } = job;
	const wrong = state.problems ?? [];
	tellAnswer(state, wrong);
	const now = state.good ? state : good;
	byId("cloth").classList.toggle("stale", !state.good);
	if (!now) {
		parts.pictures.hidden = true;
		return;
	}
	parts.pictures.hidden = false;
	const items = now.values.items;
	fill(parts.which, [
		choice("Which cloth is shown", now.items, now.item, (item) => job.pick({ item, face: 0, colourway: 0 })),
		choice("Which side is shown", now.faces, now.face, (face) => job.pick({ face })),
		choice("Which colours are shown", now.colourways, now.colourway, (colourway) => job.pick({ colourway })),
	]);
	draw(parts.look, now.picture);
	draw(parts.stands, now.stands);
	draw(parts.order, now.order);
	const wide = now.picture && now.picture.box.w > 1.7 * now.picture.box.h;
	parts.pictures.classList.toggle("stacked", Boolean(wide || now.stands));
	if (now.picture) handles(parts.look, now);
	say(parts.words, now.words ?? "");
	tellMore(state);
}

function draw(part, picture) {
	part.figure.hidden = !picture;
	if (!picture || picture.svg === part.drawn) return;
	part.drawn = picture.svg;
	part.frame.style.setProperty("--ratio", show(part.host, picture.svg, part.title));
}

function tellAnswer(state, wrong) {
	say(parts.now, wrong.length ? `Not yet: ${wrong[0].text}` : (state.answer?.[0]?.text ?? ""));
	parts.now.classList.toggle("bad", wrong.length > 0);
	if (wrong.length === 0) {
		fill(parts.answer, (state.answer ?? []).map((a, i, all) => make("p", {}, all.length > 1 ? make("span", { class: "of" }, a.pass) : null, a.text)));
		tell((state.answer ?? []).map((a) => a.text).join(" "));
		alarm("");
		return;
	}
	const first = wrong[0];
	fill(parts.answer, [make("p", { class: "not-yet" }, make("span", { class: "of" }, "Not yet"), first.text, " ",
		wrong.length > 1 ? `And ${wrong.length - 1} more. ` : "",
		first.line ? press(`go to it, line ${first.line}`, () => goTo(first.path) || dispatchEvent(new CustomEvent("go-to-line", { detail: first.line })), { class: "ask" }) : "")]);
	alarm(`Not yet: ${first.text}`);
}

function tellMore(state) {
	const nodes = [];
	for (const m of [...(state.more ?? []), ...(state.overlaps ?? [])]) nodes.push(ways(m));
	const [serves, ...slips] = state.serves ?? [];
	for (const text of [serves, state.set]) if (text) nodes.push(make("p", {}, text));
	const rest = [...slips, ...(state.notes ?? []).map((n) => n.text)];
	if (rest.length > 0) nodes.push(noted(rest));
	if (state.shelf) nodes.push(make("pre", { class: "shelf", tabindex: "0" }, state.shelf));
	fill(parts.more, nodes);
}

// noted keeps what else is to be known behind a word, open or shut as it was left.
function noted(texts) {
	parts.notes ??= make("details", {}, make("summary", {}, "What else to know"));
	fill(parts.notes, [parts.notes.firstChild, ...texts.map((text) => make("p", {}, text))]);
	return parts.notes;
}

// ways writes something that could be had; a press on one of the ways to it puts that into the job.
function ways(m) {
	const line = make("p", {}, `${m.text} `);
	(m.ways ?? []).forEach((way, i, all) => {
		line.append(i === 0 ? "" : i === all.length - 1 ? " or " : ", ",
			way.edits?.length ? press(way.text, () => job.edit(way.edits, "more"), { class: "ask" }) : way.text);
	});
	if (m.ways?.length) line.append(".");
	return line;
}
