//! Weighing the can of a piece: the values known before weighing, and the effect of a weighed can.

use std::rc::Rc;

use coatings::Substrate;
use units::{Area, System, Volume};

use crate::document::{Piece, Workshop};
use crate::edit::{BookEdit, Edit};
use crate::learning::Weighed;
use crate::learning::lessons;
use crate::takeoff::{MaterialLine, Takeoff, takeoff};

/// Returns the initial values of a line for weighing a can: everything known before weighing. If several
/// tools use the can, the rate is assigned to the tool with the largest area.
pub fn to_weigh(
    workshop: &Workshop,
    piece: &Piece,
    takeoff: &Takeoff,
    line: &MaterialLine,
) -> Vec<(&'static str, String)> {
    let mut by_tool: Vec<(&'static str, f64)> = Vec::new();
    let mut coated = 0.0;
    let mut ground = None;
    for zone in &takeoff.job.zones {
        for (place, layer) in zone.layers.iter().enumerate() {
            if !line.need.is_of(layer) || layer.coats == 0 {
                continue;
            }
            ground.get_or_insert(zone.substrate_under(place));
            for patch in &zone.patches {
                let area = patch.area.as_square_metres() * f64::from(layer.coats);
                coated += area;
                let tool = layer.tool_on(patch.narrow).key;
                match by_tool.iter_mut().find(|(key, _)| *key == tool) {
                    Some((_, sum)) => *sum += area,
                    None => by_tool.push((tool, area)),
                }
            }
        }
    }
    let tool = by_tool.into_iter().max_by(|(_, a), (_, b)| a.total_cmp(b));
    let area = coated / f64::from(line.coats.max(1));
    let area = match workshop.units {
        System::Metric => format!("{area:.3} m\u{b2}"),
        System::UsCustomary => format!("{:.2} ft\u{b2}", Area::square_metres(area).as_square_feet()),
    };
    vec![
        ("of", piece.id.0.to_string()),
        ("piece", piece.name.clone()),
        ("material", line.need.material.key.to_string()),
        ("tool", tool.map_or("", |(key, _)| key).into()),
        ("coats", line.coats.to_string()),
        ("ground", ground.unwrap_or(Substrate::Sealed).key().into()),
        ("area", area),
        (
            "share",
            format!("{:.1} %", takeoff.painted.give_or_take() * 100.0),
        ),
    ]
}

/// Returns the likely volume of an amount without and with one weighed can. Returns `None` if the can gives
/// no rate or the piece does not use the material.
pub fn changed(workshop: &Workshop, piece: &Piece, taken: &Takeoff, of: &Weighed) -> Option<[Volume; 2]> {
    of.observed.ok()?;
    let likely = |takeoff: &Takeoff| {
        let mut lines = takeoff.materials.iter();
        let line = lines.find(|line| line.need.material.key == of.material.key)?;
        Some(line.need.likely())
    };
    let strike = BookEdit::Strike("weighings", Rc::clone(&of.id));
    let without = workshop.apply(Edit::Book(strike)).ok()?;
    let before = takeoff(&without, piece, &lessons(&without)).ok()?;
    Some([likely(&before)?, likely(taken)?])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::{Record, Weighing};
    use crate::invented_workshop;
    use crate::learning::{Unweighed, weighed};
    use crate::samples::{JOB, takeoff_in, with_jobs as with};

    /// Consistent jobs make later takeoffs with the same tool more certain and shift them toward what was
    /// used. Other tools are unaffected.
    #[test]
    fn later_takeoffs_reckon_with_it() {
        let jobs: Vec<&[(&'static str, &str)]> = vec![&JOB; 6];
        let (bare, taught) = (invented_workshop(), with(&jobs));
        let need = |workshop: &Workshop| {
            let taken = takeoff_in(workshop, &workshop.pieces[0]).unwrap();
            let line = taken
                .materials
                .iter()
                .find(|line| line.need.material.key == "trim-enamel")
                .unwrap();
            let width = line.need.high() / line.need.low();
            (width, line.need.likely().as_litres(), line.jobs)
        };
        let ((before, _, none), (after, likely, jobs)) = (need(&bare), need(&taught));
        assert!(after < before, "{after} {before}");
        assert_eq!((none, jobs), (0, 6));
        // The area of two coats at the middle rate after six jobs, plus what the tool keeps.
        let taken = takeoff_in(&taught, &taught.pieces[0]).unwrap();
        let area = taken.painted.value.as_square_metres();
        let rate = lessons(&taught)[0].by_film.range().middle();
        let kept: f64 = coatings::tool("foam-roller")
            .unwrap()
            .keeps
            .iter()
            .map(|keeps| keeps.litres.middle())
            .sum();
        assert!(
            ((likely - kept) / (2.0 * area / rate) - 1.0).abs() < 0.02,
            "{likely}"
        );
    }

    /// The second of two jobs shifts the amount after the first one. A can of another material has no effect.
    #[test]
    fn a_weighed_can_says_what_it_changes() {
        let two = with(&[&JOB, &JOB]);
        let likely = |workshop: &Workshop| {
            let taken = takeoff_in(workshop, &workshop.pieces[0]).unwrap();
            let mut lines = taken.materials.iter();
            let line = lines.find(|line| line.need.material.key == "trim-enamel");
            line.unwrap().need.likely()
        };
        let taken = takeoff_in(&two, &two.pieces[0]).unwrap();
        let of = |place: usize| changed(&two, &two.pieces[0], &taken, &weighed(&two)[place]);
        assert_eq!(of(1), Some([likely(&with(&[&JOB])), likely(&two)]));
        assert_ne!(likely(&with(&[&JOB])), likely(&two));
        let mut other = JOB;
        other[0] = ("material", "chalk-type-paint");
        let other = with(&[&other]);
        let taken = takeoff_in(&other, &other.pieces[0]).unwrap();
        let known = &weighed(&other)[0];
        assert_eq!(changed(&other, &other.pieces[0], &taken, known), None);
    }

    #[test]
    fn a_line_to_weigh_knows_all_but_the_scale() {
        let workshop = invented_workshop();
        let piece = &workshop.pieces[0];
        let taken = takeoff_in(&workshop, piece).unwrap();
        let line = taken
            .materials
            .iter()
            .find(|line| line.need.material.key == "trim-enamel")
            .unwrap();
        let values = to_weigh(&workshop, piece, &taken, line);
        let add = BookEdit::Add("weighings", "w".into(), values);
        let noted = workshop.apply(Edit::Book(add)).unwrap();
        let kept = &noted.books.lines("weighings")[0];
        assert_eq!((kept.text("tool"), kept.text("coats")), ("foam-roller", "2"));
        let area = Weighing::read(kept).area.unwrap().as_square_metres();
        assert!((area / taken.painted.value.as_square_metres() - 1.0).abs() < 1e-3);
        assert_eq!(
            weighed(&noted)[0].observed,
            Err(Unweighed::Lacking("Can weight before"))
        );
    }
}
