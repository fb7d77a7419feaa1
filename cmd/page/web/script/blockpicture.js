import { make, press } from "./dom.js";
import { job } from "./job.js";
import { tellNow } from "./live.js";

// A block's picture, from a file or the camera: taken as it is, or measured in the printed window.
export function pictureOf(block, once) {
	return once(`picture:${block.path}`, () => {
		const said = make("span", { class: "quiet-words" });
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
				how(block.path, chosen.name, bytes);
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
		return make("p", { class: "sentence small picture-of" },
			"A picture of one print: ",
			press("choose a file", () => file.click(), { class: "ask" }), " or ", press("take a photograph", () => camera.click(), { class: "ask" }),
			". ", press("print the window to measure it in", () => dispatchEvent(new CustomEvent("window-page")), { class: "ask" }),
			said, file, camera, dialog);
	});
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

async function measured(path, from, bytes) {
	tellNow("Measuring …");
	try {
		const { width, height, inked, words, made } = await job.slow.call("Trace", { name: from }, { files: [bytes], seconds: 60 });
		const name = plainName(from, "png");
		job.give(name, made[0]);
		job.edit([{ path: `${path}.picture`, value: name }, { path: `${path}.print`, value: `${width} x ${height} mm` }, { path: `${path}.inked`, value: inked }], "trace");
		tellNow(words);
	} catch (trouble) {
		job.say(trouble.message);
	}
}
