import { after, byId, fill, make, press, say } from "./dom.js";
import { Trouble } from "./engine.js";
import { download } from "./files.js";
import { explain, job } from "./job.js";
import { tellNow } from "./live.js";
import { show } from "./picture.js";

// The papers as they will come out of the printer, before anything is saved.
const parts = {};
let told = ""; // the text that the frames are of
let papers = null;

function build() {
	parts.title = make("h2", { id: "papers-title" }, "The papers");
	parts.said = make("div", { class: "said-of-paper" });
	parts.counts = byId("sheets");
	parts.pdf = press("Make the PDF", makePDF, { class: "do" });
	parts.keep = press("Keep the job", keepJob, { class: "plain" });
	parts.note = make("p", { class: "quiet-words" }, "Print it at 100 % (“actual size”), not fitted to the page, and measure a check bar before you cut anything. The PDF carries the job inside: opened here, it comes back.");
	parts.pages = make("ol", { class: "pages" });
	parts.large = make("dialog", { class: "large", "aria-label": "A page of the papers" });
	byId("papers").append(parts.title, parts.said, make("p", { class: "actions" }, parts.pdf, parts.keep), parts.note, parts.pages, parts.large);
	parts.seen = new IntersectionObserver((entries) => {
		for (const e of entries) if (e.isIntersecting) draw(e.target);
	}, { rootMargin: "400px" });
}

export function tellPapers(sentences) {
	if (!parts.title) build();
	fill(parts.said, sentences);
	const ready = job.state.good;
	byId("papers").dataset.file = job.file;
	parts.pdf.disabled = !ready;
	byId("papers").classList.toggle("stale", !ready || job.text !== told);
	if (ready && job.text !== told) ask();
}

const ask = after(600, async () => {
	const text = job.text;
	if (text === told || !job.state.good || text !== job.shown) return;
	try {
		job.slow.giveWay();
		const answer = await job.slow.call("Papers", { text, picked: job.picked }, { seconds: 60, again: true });
		if (job.text !== text) return;
		told = text;
		papers = answer;
		if (answer.problems.length > 0) throw new Trouble("refused", answer.problems.map((p) => p.text).join(" "));
		tellCounts();
		lay();
		byId("papers").classList.remove("stale");
	} catch (trouble) {
		if (trouble.kind === "stopped") return;
		told = text;
		fill(parts.counts, [document.createTextNode(explain(trouble))]);
		fill(parts.pages, []);
		byId("papers").classList.remove("stale");
		parts.pdf.disabled = true;
	}
});

// tellCounts says how many sheets each paper takes; a press takes another paper.
function tellCounts() {
	const guides = [...new Set(papers.counts.map((c) => c.guide))];
	fill(parts.counts, guides.map((guide) => {
		const own = papers.counts.filter((c) => c.guide === guide);
		const line = make("span", { class: "line" }, guide ? `The guide for ${guide} takes ` : "The guide takes ");
		own.forEach((c, i) => {
			const text = c.paper === "one sheet" ? "all of it on one sheet" : `${c.sheets} ${c.sheets === 1 ? "sheet" : "sheets"} of ${c.paper}`;
			line.append(i === 0 ? "" : i === own.length - 1 ? " or " : ", ", c.own ? make("strong", {}, text) : press(text, () => job.edit(c.edits), { class: "ask" }));
		});
		line.append(".");
		return line;
	}));
}

// lay makes a frame for each page; its drawing comes when it is near to be seen.
function lay() {
	parts.seen.disconnect();
	fill(parts.pages, papers.pages.map((page, i) => {
		const host = make("div", { class: "picture", role: "img", "aria-label": `page ${i + 1}: ${page.name}` });
		const open = press("", () => enlarge(i), { class: "page", "aria-label": `page ${i + 1}, ${page.name}: see it large` });
		open.append(host);
		open.style.setProperty("--ratio", page.w / page.h);
		open.dataset.page = i;
		parts.seen.observe(open);
		return make("li", {}, open, make("span", { class: "page-name", "aria-hidden": "true" }, page.name));
	}));
}

async function sheet(page) {
	const { svg } = await job.slow.call("Sheet", { text: told, page }, { seconds: 60, again: true });
	return svg;
}

async function draw(open) {
	if (open.dataset.drawn) return;
	open.dataset.drawn = "yes";
	try {
		show(open.querySelector(".picture"), await sheet(Number(open.dataset.page)));
	} catch {
		delete open.dataset.drawn;
	}
}

// enlarge shows a page as large as the window; leafing on keeps the keys where they are.
async function enlarge(i, way = 1) {
	const page = papers.pages[i];
	const host = make("div", { class: "picture", role: "img", "aria-label": `page ${i + 1}: ${page.name}` });
	const frame = make("div", { class: "large-page" }, host);
	frame.style.setProperty("--ratio", page.w / page.h);
	const before = press("the one before", () => enlarge(i - 1, -1), { class: "plain", disabled: i === 0 });
	const next = press("the next", () => enlarge(i + 1, 1), { class: "plain", disabled: i === papers.pages.length - 1 });
	const close = press("close", () => parts.large.close(), { class: "plain" });
	parts.large.replaceChildren(
		make("p", { class: "actions" }, make("span", { class: "large-name", role: "status" }, `Page ${i + 1} of ${papers.pages.length}: ${page.name}`), before, next, close),
		frame);
	if (!parts.large.open) parts.large.showModal();
	const on = way < 0 ? before : next;
	(on.disabled ? close : on).focus();
	try {
		show(host, await sheet(i));
	} catch (trouble) {
		say(frame, explain(trouble));
	}
}

async function makePDF() {
	tellNow("Making the PDF …");
	parts.pdf.setAttribute("aria-busy", "true");
	try {
		const { made } = await job.slow.call("Draw", { text: job.text, parts: [] }, { seconds: 180 });
		download(`${job.file}.pdf`, made[0], "application/pdf");
		tellNow("The PDF is made: it is where your browser keeps what it saves.");
	} catch (trouble) {
		job.say(explain(trouble));
	}
	parts.pdf.removeAttribute("aria-busy");
}

function keepJob() {
	download(`${job.file}.toml`, new TextEncoder().encode(job.text), "application/toml");
	for (const [name, bytes] of job.pictures) if (job.text.includes(name)) download(name, bytes, "image/png");
	tellNow("The job is kept: it is where your browser keeps what it saves.");
}

// paperOf is the paper that the job is printed on.
function paperOf(state) {
	const size = state.values?.values.find((v) => v.path === "paper.size");
	return size?.text || size?.usual || "A4";
}

addEventListener("window-page", async () => {
	try {
		const { made } = await job.slow.call("Window", { name: paperOf(job.state) }, { seconds: 60 });
		download("window.pdf", made[0], "application/pdf");
		tellNow("The window is made as window.pdf. Print it at 100 %.");
	} catch (trouble) {
		job.say(explain(trouble));
	}
});
