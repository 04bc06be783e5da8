//! Coverage rates learned from the maker's own jobs. Weighing a can before and after a job shows how far a
//! liter went with a tool, and later takeoffs use that rate. The model is [`coatings::learn`].

use std::fmt;
use std::rc::Rc;

use coatings::learn::{Doubt, Fault, Learned, Observed, Use, learn, usual_rate};
use coatings::{Basis, Estimate, Material, OwnRate, Substrate, Tool};
use units::Volume;

use crate::book::{Share, Weighing, label};
use crate::document::{Workshop, material_of};
use crate::mixing::scale;

/// The relative uncertainty of an area when none is given (common practice, no source). A carefully measured
/// piece has less.
const USUAL_SHARE: f64 = 0.03;

/// A can that was weighed before and after a job.
#[derive(Clone, Debug, PartialEq)]
pub struct Weighed {
    /// The id of its line.
    pub id: Rc<str>,
    /// The material in the can.
    pub material: Rc<Material>,
    /// The tool it was applied with.
    pub tool: &'static Tool,
    /// The volume that left the can, at the middle of the density range. `None` until it was weighed twice.
    pub used: Option<Volume>,
    /// The observed rate.
    pub observed: Result<Observed, Unweighed>,
    /// True if the maker confirmed the rate, however unusual it is.
    pub is_confirmed: bool,
}

impl Weighed {
    /// Returns doubts about the rate, compared with both the usual film of the tool and the label.
    pub fn doubts(&self) -> Vec<Doubt> {
        let Ok(seen) = self.observed else {
            return Vec::new();
        };
        let by = |basis: Basis| seen.doubts(usual_rate(&self.material, self.tool, basis));
        let by_label = by(Basis::LabelRate);
        let is_far = |doubts: &[Doubt]| doubts.iter().any(|doubt| matches!(doubt, Doubt::Far { .. }));
        let far_by_film = is_far(&by(Basis::WetFilm));
        let both = |doubt: &Doubt| far_by_film || !matches!(doubt, Doubt::Far { .. });
        by_label.into_iter().filter(both).collect()
    }

    /// Returns true if the maker must confirm the rate before it is used. It is far from the usual rate, and
    /// one wrong weight would make every later amount uncertain.
    pub fn is_questioned(&self) -> bool {
        let mut doubts = self.doubts().into_iter();
        !self.is_confirmed && doubts.any(|doubt| matches!(doubt, Doubt::Far { .. }))
    }

    /// Returns the rate if it is used.
    fn counted(&self) -> Option<Observed> {
        self.observed.ok().filter(|_| !self.is_questioned())
    }
}

/// Why a line gives no rate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unweighed {
    /// This field is empty.
    Lacking(&'static str),
    /// The values are impossible.
    Fault(Fault),
}

impl fmt::Display for Unweighed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Unweighed::Lacking(label) => {
                write!(f, "Still missing: {}.", coatings::in_sentence(label))
            }
            Unweighed::Fault(fault) => fault.fmt(f),
        }
    }
}

/// The rate learned from all jobs with one material and one tool.
#[derive(Clone, Debug, PartialEq)]
pub struct Lesson {
    /// The material.
    pub material: Rc<Material>,
    /// The tool.
    pub tool: &'static Tool,
    /// The rate before and after learning, starting from the film of the tool.
    pub by_film: Learned,
    /// The rate before and after learning, starting from the label.
    pub by_label: Learned,
}

impl Lesson {
    /// Returns the rate for amounts on this basis.
    pub fn learned(&self, basis: Basis) -> Learned {
        match basis {
            Basis::WetFilm => self.by_film,
            Basis::LabelRate => self.by_label,
        }
    }
}

/// Returns every weighed can whose material and tool are known.
pub fn weighed(workshop: &Workshop) -> Vec<Weighed> {
    let of = |line: Weighing| {
        let material = material_of(&workshop.materials, &line.material)?;
        let tool = line.tool?;
        Some(Weighed {
            used: used(&line, &material),
            observed: observed(workshop, &line, &material, tool),
            is_confirmed: line.sure,
            id: line.id,
            material,
            tool,
        })
    };
    workshop.books.all().filter_map(of).collect()
}

fn used(line: &Weighing, material: &Material) -> Option<Volume> {
    let (before, after) = line.before.zip(line.after)?;
    let litres = (before - after).as_kilograms() / material.density.middle();
    (litres > 0.0).then(|| Volume::litres(litres))
}

fn observed(
    workshop: &Workshop,
    line: &Weighing,
    material: &Material,
    tool: &Tool,
) -> Result<Observed, Unweighed> {
    // The weights come last because everything else is known before weighing.
    let lacking = |key| Unweighed::Lacking(label::<Weighing>(key));
    let area = line.area.ok_or_else(|| lacking("area"))?;
    let coats = line.coats.ok_or_else(|| lacking("coats"))?;
    let before = line.before.ok_or_else(|| lacking("before"))?;
    let after = line.after.ok_or_else(|| lacking("after"))?;
    let share = line.share.map_or(USUAL_SHARE, |Share(share)| share / 2.0);
    let job = Use {
        before,
        after,
        scale: scale(workshop),
        density: material.density,
        area: Estimate {
            value: area,
            standard_uncertainty: area * share,
        },
        coats,
        substrate: line.ground.unwrap_or(Substrate::Sealed),
        kept: tool.keeps.iter().map(|keeps| keeps.litres).collect(),
    };
    Observed::of(&job).map_err(Unweighed::Fault)
}

/// Returns the rates learned from the maker's jobs, for each material and tool, in the order first weighed.
pub fn lessons(workshop: &Workshop) -> Vec<Lesson> {
    let all = weighed(workshop);
    let mut lessons: Vec<Lesson> = Vec::new();
    for first in all.iter().filter(|weighed| weighed.counted().is_some()) {
        let is_same = |key: &str, tool: &Tool| key == &*first.material.key && tool.key == first.tool.key;
        if lessons
            .iter()
            .any(|lesson| is_same(&lesson.material.key, lesson.tool))
        {
            continue;
        }
        let alike = all
            .iter()
            .filter(|other| is_same(&other.material.key, other.tool));
        let jobs: Vec<Observed> = alike.filter_map(Weighed::counted).collect();
        let by = |basis: Basis| learn(usual_rate(&first.material, first.tool, basis), &jobs);
        lessons.push(Lesson {
            by_film: by(Basis::WetFilm),
            by_label: by(Basis::LabelRate),
            material: Rc::clone(&first.material),
            tool: first.tool,
        });
    }
    lessons
}

/// Returns the learned rates of one material for each tool, in the form a job needs on this basis.
pub(crate) fn own_rates(lessons: &[Lesson], material: &str, basis: Basis) -> Rc<[OwnRate]> {
    let of_material = lessons.iter().filter(|lesson| lesson.material.key == material);
    let rate = |lesson: &Lesson| OwnRate {
        tool: lesson.tool.key,
        rate: lesson.learned(basis).range(),
        jobs: lesson.learned(basis).jobs(),
    };
    of_material.map(rate).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::samples::{JOB, with_jobs as with};

    /// By hand: 620 g divided by the middle density is the volume in liters. Subtract what the tool keeps.
    /// The rate is 6 m² of coats divided by the rest.
    #[test]
    fn a_weighed_can_shows_a_rate() {
        let workshop = with(&[&JOB]);
        let found = &weighed(&workshop)[0];
        let kept: f64 = found.tool.keeps.iter().map(|keeps| keeps.litres.middle()).sum();
        let litres = 0.62 / found.material.density.middle() - kept;
        assert!((found.used.unwrap().as_litres() - litres - kept).abs() < 1e-12);
        let rate = found.observed.unwrap().rate();
        assert!((rate - 6.0 / litres).abs() < 1e-9, "{rate}");
        // The learned rate is between the label and the job, with a narrower range than the label.
        let lesson = &lessons(&workshop)[0];
        let (label, learned) = (lesson.by_label.before(), lesson.by_label.middle());
        assert!(
            (label.middle() - learned) * (learned - rate) > 0.0,
            "{learned} {rate}"
        );
        assert_eq!((lesson.by_label.jobs(), lesson.tool.key), (1, "foam-roller"));
    }

    #[test]
    fn what_is_missing_is_asked_for_and_what_cannot_be_says_so() {
        let fault =
            |values: &[(&'static str, &str)]| weighed(&with(&[values]))[0].observed.unwrap_err().to_string();
        assert_eq!(fault(&JOB[..6]), "Still missing: can weight after.");
        assert_eq!(fault(&JOB[..3]), "Still missing: area coated.");
        let heavier = [&JOB[..6], &[("after", "1500 g")]].concat();
        assert!(
            fault(&heavier).starts_with("Enter the heavier weight first"),
            "{}",
            fault(&heavier)
        );
        assert!(weighed(&with(&[&JOB[..1]])).is_empty(), "without a tool");
        assert!(lessons(&with(&[&JOB[..6]])).is_empty());
    }

    /// With 300 g for 6 m² of coats, a liter would go about three times as far as a label says.
    #[test]
    fn what_is_far_from_usual_is_asked_about_before_it_counts() {
        let far = [&JOB[..6], &[("after", "1100 g")]].concat();
        let asked = with(&[&far]);
        assert!(weighed(&asked)[0].is_questioned() && lessons(&asked).is_empty());
        let right = with(&[&[&far[..], &[("sure", "yes")]].concat()]);
        assert!(!weighed(&right)[0].is_questioned());
        assert_eq!(lessons(&right)[0].by_film.jobs(), 1);
        let usual = with(&[&JOB]);
        assert!(!weighed(&usual)[0].is_questioned());
    }
}
