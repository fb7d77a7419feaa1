import { byId, fill, make, press, say } from "./dom.js";
import { Trouble } from "./engine.js";
import { explain, job } from "./job.js";
import { tellNow } from "./live.js";
import { forget, remembers } from "./memory.js";

// How a job is begun, opened, taken back and forgotten.
const parts = {};

function build() {
	const starts = { cushion: "a cushion", towel: "a towel", bag: "a bag", shade: "a lampshade" };
	const line = make("p", { class: "begins" }, "Begin with ");
	Object.entries(starts).forEach(([shape, text], i, all) => {
		line.append(i === 0 ? "" : i === all.length - 1 ? " or " : ", ", press(text, () => begin(shape), { class: "ask" }));
	});
	parts.file = make("input", { type: "file", accept: ".toml,.pdf,.txt,.png,.jpg,.jpeg,application/pdf,text/plain,image/png,image/jpeg", class: "unseen", multiple: true, tabindex: "-1", "aria-hidden": "true" });
	parts.file.addEventListener("change", () => {
		open([...parts.file.files]); // the list itself is emptied with the field
		parts.file.value = "";
	});
	line.append(", or ", press("open a job or a guide", () => parts.file.click(), { class: "ask" }), ".");
	parts.back = press("Take back", () => job.takeBack(), { class: "plain", id: "take-back" });
	parts.word = make("p", { class: "word", hidden: true, role: "alert" });
	byId("begin").append(line, parts.file, parts.back, parts.word);
	parts.kept = make("p");
	const licences = make("dialog", { class: "large", "aria-label": "Licences" },
		make("p", { class: "actions" }, press("Close", () => licences.close(), { class: "plain" })),
		make("pre", { tabindex: "0" }, byId("notices").textContent));
	byId("kept").append(parts.kept, make("p", { class: "quiet-words" }, "Take care: paint, dye and heat setting by their makers' labels, in an aired room; cut away from the hand; an iron is hot. Printing does not make a lampshade safe: use shade materials and lamps rated for it, and keep to local rules. In doubt ask a qualified person."),
		make("p", {}, press("Licences of what this page is made from", () => licences.showModal(), { class: "quiet" })), licences);
	const over = (e) => {
		if (![...e.dataTransfer.types].includes("Files")) return;
		e.preventDefault();
		document.body.classList.toggle("dropping", e.type === "dragover");
	};
	for (const type of ["dragover", "dragleave"]) addEventListener(type, over);
	addEventListener("drop", (e) => {
		over(e);
		if (e.dataTransfer.files.length) open([...e.dataTransfer.files]);
	});
	job.say = (text) => {
		parts.word.textContent = text;
		parts.word.hidden = !text;
		if (text) parts.word.scrollIntoView({ block: "nearest" });
	};
}

async function begin(shape) {
	const { text } = await job.quick.call("Start", { shape });
	job.other(text, "");
	tellNow("Begun anew. Take back brings the last job again.");
}

// open reads a job, a guide, or pictures of a job's blocks, in any number at once.
async function open(files) {
	job.say("");
	let name = "";
	try {
		const all = [];
		for (const f of files) {
			name = f.name;
			all.push({ name, bytes: new Uint8Array(await f.arrayBuffer()) });
		}
		const isPicture = (f) => /\.(png|jpe?g)$/i.test(f.name);
		const opened = all.find((f) => !isPicture(f));
		let answer;
		if (opened) {
			name = opened.name;
			answer = await job.slow.call("Open", { name }, { files: [opened.bytes], seconds: 60 });
		}
		for (const p of all.filter(isPicture)) job.give(p.name, p.bytes);
		if (!answer) {
			job.run();
			return;
		}
		answer.pictures.forEach((p, i) => job.give(p, answer.made[i]));
		job.other(answer.text, answer.name);
		tellNow(`${name} is open. Take back brings the last job again.`);
	} catch (trouble) {
		job.say(`${name}: ${trouble instanceof Trouble ? explain(trouble) : "the browser could not read this file; choose it again"}`);
	}
}

export function tellBegin() {
	if (!parts.back) build();
	parts.back.disabled = job.past.length === 0;
	if (parts.remembers === remembers()) return;
	parts.remembers = remembers();
	if (remembers()) {
		fill(parts.kept, [document.createTextNode("What you type stays on this device and is here again when you come back. Nothing is sent anywhere. "), press("Forget it", async () => {
			await forget();
			say(parts.kept, "Forgotten. What you type from now on is kept again.");
			tellNow("Forgotten.");
		}, { class: "ask" })]);
	} else {
		say(parts.kept, "This browser keeps nothing here, as in a private window: press “Keep the job” before you close the page. Nothing is sent anywhere.");
	}
}
