import advice from "./advice.json";
import against from "./against.json";
import agreement from "./agreement.json";
import care from "./care.json";
import caution from "./caution.json";
import change from "./change.json";
import charts from "./charts.json";
import checks from "./checks.json";
import citation from "./citation.json";
import coaching from "./coaching.json";
import compare from "./compare.json";
import constant from "./constant.json";
import constantUnit from "./constant-unit.json";
import criterion from "./criterion.json";
import cueBench from "./cue-bench.json";
import cuePart from "./cue-part.json";
import cuePicture from "./cue-picture.json";
import cueView from "./cue-view.json";
import cues from "./cues.json";
import drawing from "./drawing.json";
import field from "./field.json";
import figure from "./figure.json";
import fitting from "./fitting.json";
import fittingSteps from "./fitting-steps.json";
import gauge from "./gauge.json";
import gauges from "./gauges.json";
import grain from "./grain.json";
import growth from "./growth.json";
import hint from "./hint.json";
import home from "./home.json";
import job from "./job.json";
import jobRefusal from "./job-refusal.json";
import label from "./label.json";
import likeMine from "./like-mine.json";
import locator from "./locator.json";
import measured from "./measured.json";
import midSentence from "./mid-sentence.json";
import notice from "./notice.json";
import offline from "./offline.json";
import online from "./online.json";
import part from "./part.json";
import players from "./players.json";
import pose from "./pose.json";
import problem from "./problem.json";
import quantity from "./quantity.json";
import reasons from "./reasons.json";
import refusal from "./refusal.json";
import search from "./search.json";
import settingRefusal from "./setting-refusal.json";
import settings from "./settings.json";
import sheet from "./sheet.json";
import shell from "./shell.json";
import sources from "./sources.json";
import specs from "./specs.json";
import summary from "./summary.json";
import timeline from "./timeline.json";
import tradeOff from "./trade-off.json";
import trial from "./trial.json";
import trials from "./trials.json";
import twoGames from "./two-games.json";
import waysOut from "./ways-out.json";
import woods from "./woods.json";
import workshop from "./workshop.json";

export const ENGLISH = {
	agreement,
	care,
	caution,
	checks,
	citation,
	coaching,
	compare,
	constant,
	constantUnit,
	cueView,
	drawing,
	field,
	figure,
	home,
	job,
	jobRefusal,
	label,
	locator,
	midSentence,
	notice,
	offline,
	online,
	part,
	players,
	problem,
	quantity,
	refusal,
	settingRefusal,
	settings,
	sheet,
	shell,
	sources,
	summary,
	timeline,
	reasons,
	advice,
	criterion,
	change,
	against,
	tradeOff,
	search,
	waysOut,
	likeMine,
	twoGames,
	charts,
	measured,
	gauge,
	growth,
	pose,
	trial,
	trials,
	cuePart,
	cuePicture,
	cueBench,
	grain,
	cues,
	gauges,
	specs,
	fittingSteps,
	hint,
	fitting,
	woods,
	workshop,
};
