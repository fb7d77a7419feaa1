import { make, press, say } from "./dom.js";
import { explain, job } from "./job.js";
import { tellNow } from "./live.js";

// A block's picture, from a file or the camera: taken as it is, or measured in the printed window.
export function pictureOf(block, part, once, problems) {
	const wrong = problems.filter((p) => p.path === `${block.path}.picture`);
	for (const p of wrong) p.shown = true;
	const given = part.at("picture")?.text ?? "";
	const element = once(`picture:${block.path}`, () => build(block.path));
	say(element.querySelector(".picture-name"), given ? `Its print looks as in ${given}; another picture: ` : "A picture of one print: ");
	element.querySelector(".picture-out").hidden = !given;
	say(element.querySelector(".wrong"), wrong.map((p) => p.text).join(" "));
	element.querySelector(".wrong").hidden = wrong.length === 0;
	return element;
}

function build(path) {
	const input = (capture) => {
		const field = make("input", { type: "file", accept: "image/png,image/jpeg,image/*", class: "unseen", tabindex: "-1", "aria-hidden": "true", capture });
		field.addEventListener("change", () => {
			if (field.files[0]) choose(field.files[0]);
			field.value = "";
		});
		return field;
	};
	const [file, camera] = [input(false), input("environment")];
	const dialog = make("dialog", { class: "ask-how", "aria-label": "A picture of the block" });
	const choose = async (chosen) => {
		const bytes = new Uint8Array(await chosen.arrayBuffer());
		const done = (how) => {
			dialog.close();
			how(path, chosen.name, bytes);
		};
		dialog.replaceChildren(
			make("h2", {}, "Was it printed inside the window?"),
			make("p", {}, "The window is a page with four marks. A print made inside it can be measured from a photograph; any other picture shows what the block prints, and you measure the block yourself."),
			make("p", { class: "actions" },
				press("As it is", () => done(asItIs), { class: "plain" }),
				press("Measure it in the window", () => done(measured), { class: "plain" }),
				press("Neither", () => dialog.close(), { class: "quiet" })),
		);
		dialog.showModal();
	};
	return make("div", { class: "picture-of" },
		make("p", { class: "sentence small" },
			make("span", { class: "picture-name" }),
			press("choose a file", () => file.click(), { class: "ask" }), " or ", press("take a photograph", () => camera.click(), { class: "ask" }), ". It shows what the block prints, and is not measured from, unless the print was made in ",
			press("the window, a page with four marks", () => dispatchEvent(new CustomEvent("window-page")), { class: "ask" }), ". ",
			press("leave out", () => job.edit([{ path: `${path}.picture`, value: "" }]), { class: "quiet picture-out", "aria-label": "leave out: the picture of the block" })),
		make("p", { class: "wrong" }), file, camera, dialog);
}

// plainName makes a file's name one that a job can say.
function plainName(name, ending) {
	const stem = name.replace(/\.[^.]*$/, "").replace(/[^\p{L}\p{N} _-]+/gu, "-").slice(0, 60) || "print";
	return `${stem}.${ending}`;
}

const endingOf = (bytes) => bytes[0] === 0xff ? "jpg" : "png";


async function asItIs(path, from, bytes) {
	const name = plainName(from, endingOf(bytes));
	job.give(name, bytes);
	job.edit([{ path: `${path}.picture`, value: name }]);
	tellNow("The picture is in the job.");
}

const nameOf = (path) => job.state.values.blocks.find((b) => b.path === path)?.name ?? "";

// measured takes a print's size and its picture from a photograph, and shows both before they are taken.
async function measured(path, from, bytes) {
	job.say("Measuring …");
	try {
		const { print, words, file, edits, made } = await job.slow.call("Trace", { name: from, what: nameOf(path) }, { files: [bytes], seconds: 90 });
		job.say("");
		const address = URL.createObjectURL(new Blob([made[0]], { type: "image/png" }));
		const dialog = make("dialog", { class: "ask-how", "aria-label": "What was measured" });
		const done = () => {
			dialog.close();
			dialog.remove();
			URL.revokeObjectURL(address);
		};
		dialog.append(
			make("h2", {}, print),
			make("img", { src: address, alt: "the print as it was measured", class: "traced" }),
			make("p", {}, words),
			make("p", { class: "actions" },
				press("Take it", () => {
					job.give(file, made[0]);
					job.edit(edits.map((e) => ({ path: `${path}.${e.path}`, value: e.value })), "trace");
					tellNow("The block is measured.");
					done();
				}, { class: "do" }),
				press("Leave it", done, { class: "plain" })));
		document.body.append(dialog);
		dialog.showModal();
	} catch (trouble) {
		job.say(explain(trouble));
	}
}
