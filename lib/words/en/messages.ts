import caution from "./caution.json";
import figure from "./figure.json";
import job from "./job.json";
import jobRefusal from "./job-refusal.json";
import label from "./label.json";
import midSentence from "./mid-sentence.json";
import notice from "./notice.json";
import problem from "./problem.json";
import quantity from "./quantity.json";
import refusal from "./refusal.json";
import settingRefusal from "./setting-refusal.json";
import settings from "./settings.json";
import shell from "./shell.json";

export const ENGLISH = {
	caution,
	figure,
	jobRefusal,
	job,
	label,
	midSentence,
	notice,
	problem,
	quantity,
	refusal,
	settingRefusal,
	settings,
	shell,
};
