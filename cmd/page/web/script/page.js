import { tellBegin } from "./begin.js";
import { tellCloth } from "./cloth.js";
import { accent } from "./colour.js";
import { byId } from "./dom.js";
import { explain, job } from "./job.js";
import { recall, recallPictures } from "./memory.js";
import { tellPapers } from "./papers.js";
import { tellJob } from "./said.js";
import { tellText } from "./written.js";

// The page: it begins with what was typed last on this device, or with a cushion, and shows what the
// program says of the job each time it changes.
async function letters() {
	const { made } = await job.quick.call("Letters", {});
	for (const [i, weight] of ["400", "700"].entries()) {
		const face = new FontFace("Go", made[i], { weight });
		document.fonts.add(await face.load());
	}
}

job.listeners.push(() => {
	const { state } = job;
	byId("wait").hidden = true;
	byId("job").hidden = false;
	document.title = state.title ? `${state.title} · underlay` : "underlay";
	accent((job.good ?? state).accent);
	const paper = state.values ? tellJob(state) : [];
	tellCloth();
	tellPapers(paper);
	tellText();
	tellBegin();
	document.documentElement.dataset.ready = "yes";
});

async function begin() {
	try {
		const before = recall();
		const pictures = recallPictures();
		await job.quick.start();
		await Promise.all([letters(), pictures]);
		for (const [name, bytes] of await pictures) {
			job.pictures.set(name, bytes);
			job.tell("Picture", { name }, [bytes]);
		}
		if (before) {
			job.text = before.text;
			job.edits = before.edits ?? [];
			Object.assign(job.picked, before.picked);
			job.called(before.name ?? "");
		} else {
			job.text = (await job.quick.call("Start", { shape: "cushion" })).text;
		}
		job.width = innerWidth < 1200 ? Math.min(700, innerWidth - 32) : 300;
		await job.run();
	} catch (trouble) {
		byId("wait").textContent = explain(trouble);
	}
}

begin();
