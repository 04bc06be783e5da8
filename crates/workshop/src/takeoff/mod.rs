//! The takeoff of a piece: its surfaces, what is painted of them, and what that takes.

use coatings::{
    Amount, Application, AreaEstimate, CanSize, Enough, Ground, Material, Stage, TOOLS, Tool, coats_to_match,
};
use geometry::{
    BayPlace, Edges, FieldId, Furniture, LengthField, Overlap, Problem, Surface, SurfaceId, Zone,
};
use units::{Area, Length};

use crate::document::{Piece, Reading, StageCoats, SurfaceChoice};
use crate::tape::standard_uncertainty;

/// The probability that a maker wants of a can before calling it enough (common practice, no source).
pub const WANTED_CONFIDENCE: f64 = 0.9;

/// A surface and whether it is painted.
#[derive(Clone, Debug, PartialEq)]
pub struct SurfaceLine {
    /// The surface with its working.
    pub surface: Surface,
    /// The key of the zone that it belongs to.
    pub zone: String,
    /// Whether it gets the finish.
    pub painted: bool,
    /// Whether its zone gets it, so that the maker's choice for the surface alone stands out.
    pub painted_with_zone: bool,
}

/// A zone of one piece: surfaces that are finished alike.
#[derive(Clone, Debug, PartialEq)]
pub struct ZoneLine {
    /// Its key.
    pub key: String,
    /// What the maker calls it.
    pub label: String,
    /// Whether it gets the finish.
    pub painted: bool,
    /// The net area of its painted surfaces, by how they lie, in the order of [`geometry::Orientation::ALL`].
    pub areas: [Area; 3],
    /// The net area of its surfaces that are left as they are.
    pub left: Area,
}

/// What one stage of the scheme takes.
#[derive(Clone, Debug, PartialEq)]
pub struct MaterialLine {
    /// The stage.
    pub stage: Stage,
    /// What is put on.
    pub material: &'static Material,
    /// With what.
    pub tool: &'static Tool,
    /// How many coats.
    pub coats: u32,
    /// How much.
    pub amount: Amount,
    /// The can in question.
    pub can: &'static CanSize,
    /// Whether it is enough.
    pub enough: Enough,
}

/// The whole scheme done with one tool.
#[derive(Clone, Debug, PartialEq)]
pub struct ToolColumn {
    /// The tool.
    pub tool: &'static Tool,
    /// Each stage that has coats.
    pub figures: Vec<ToolFigure>,
}

/// What one stage takes with one tool.
#[derive(Clone, Debug, PartialEq)]
pub struct ToolFigure {
    /// The stage.
    pub stage: Stage,
    /// How many coats.
    pub coats: u32,
    /// How much.
    pub amount: Amount,
    /// Whether the can in question is enough.
    pub enough: Enough,
    /// How many coats would reach the dry film that the thickest tool leaves with the same number.
    pub coats_for_equal_film: u32,
}

/// The takeoff of a piece, or of a set of pieces that are alike.
#[derive(Clone, Debug, PartialEq)]
pub struct Takeoff {
    /// Every surface of one piece.
    pub surfaces: Vec<SurfaceLine>,
    /// The zones of one piece that have any surface.
    pub zones: Vec<ZoneLine>,
    /// Parts that run into each other: the areas of both are too large by what is within the other.
    pub overlaps: Vec<Overlap>,
    /// The painted area of one piece.
    pub painted_each: Area,
    /// The painted area of the whole set with its uncertainty.
    pub painted: AreaEstimate,
    /// What each stage takes for the whole set.
    pub materials: Vec<MaterialLine>,
    /// The same with each tool alone.
    pub tools: Vec<ToolColumn>,
}

/// The takeoff of a piece.
///
/// # Errors
/// Every measurement that is out of its limits or does not fit beside the others.
pub fn takeoff(piece: &Piece) -> Result<Takeoff, Vec<Problem>> {
    let furniture = piece.furniture();
    let assembly = furniture.assembly()?;
    let surfaces: Vec<SurfaceLine> = assembly
        .surfaces()
        .into_iter()
        .map(|surface| surface_line(piece, surface))
        .collect();
    let painted_each: Area = surfaces
        .iter()
        .filter(|line| line.painted)
        .map(|line| line.surface.net)
        .sum();
    let count = f64::from(piece.count);
    let painted = AreaEstimate {
        area: painted_each * count,
        standard_uncertainty: area_uncertainty(piece, &furniture, painted_each) * count,
    };
    let materials: Vec<MaterialLine> = Stage::ALL
        .into_iter()
        .filter_map(|stage| material_line(piece, stage, painted))
        .collect();
    let tools = TOOLS
        .iter()
        .map(|tool| tool_column(piece, &materials, tool, painted))
        .collect();
    Ok(Takeoff {
        zones: zones(piece, &surfaces),
        overlaps: assembly.overlaps(),
        surfaces,
        painted_each,
        painted,
        materials,
        tools,
    })
}

fn surface_line(piece: &Piece, surface: Surface) -> SurfaceLine {
    let choice = choice(piece, &surface);
    let zone = zone_of(&surface, choice);
    let painted_with_zone = surface.takes_finish() && is_zone_painted(piece, zone);
    SurfaceLine {
        painted: is_painted(piece, &surface),
        painted_with_zone,
        zone: zone.to_owned(),
        surface,
    }
}

fn choice<'a>(piece: &'a Piece, surface: &Surface) -> Option<&'a SurfaceChoice> {
    if piece.choices.is_empty() {
        return None;
    }
    piece.choices.get(&surface.id.to_string())
}

fn zone_of<'a>(surface: &Surface, choice: Option<&'a SurfaceChoice>) -> &'a str {
    choice
        .and_then(|choice| choice.zone.as_deref())
        .unwrap_or_else(|| surface.usual_zone().key())
}

/// Zones of the maker's own get the finish unless the maker says otherwise.
fn is_zone_painted(piece: &Piece, key: &str) -> bool {
    let chosen = piece.zones.get(key).and_then(|zone| zone.painted);
    chosen.unwrap_or_else(|| Zone::by_key(key).is_none_or(Zone::painted_by_default))
}

fn is_painted(piece: &Piece, surface: &Surface) -> bool {
    let choice = choice(piece, surface);
    let painted = choice.and_then(|choice| choice.painted);
    surface.takes_finish() && painted.unwrap_or_else(|| is_zone_painted(piece, zone_of(surface, choice)))
}

/// The usual zones in their order, then those of the maker's own.
fn zones(piece: &Piece, surfaces: &[SurfaceLine]) -> Vec<ZoneLine> {
    let usual = Zone::ALL.into_iter().map(|zone| zone.key());
    let own = piece
        .zones
        .keys()
        .map(String::as_str)
        .filter(|key| Zone::by_key(key).is_none());
    usual
        .chain(own)
        .filter_map(|key| {
            let of_zone = surfaces
                .iter()
                .filter(|line| line.zone == key && line.surface.takes_finish());
            let mut line = ZoneLine {
                key: key.to_owned(),
                label: piece.zone_label(key),
                painted: is_zone_painted(piece, key),
                areas: [Area::ZERO; 3],
                left: Area::ZERO,
            };
            let mut count = 0;
            for surface in of_zone {
                count += 1;
                if surface.painted {
                    for (sum, area) in line.areas.iter_mut().zip(surface.surface.by_orientation()) {
                        *sum += area;
                    }
                } else {
                    line.left += surface.surface.net;
                }
            }
            (count > 0 || Zone::by_key(key).is_none()).then_some(line)
        })
        .collect()
}

/// The lengths of edges of one piece: what is sanded with care, and what is cut in or masked.
///
/// # Errors
/// As for [`takeoff`].
pub fn edges(piece: &Piece) -> Result<Edges, Vec<Problem>> {
    let assembly = piece.furniture().assembly()?;
    let surfaces = assembly.surfaces();
    let painted = surfaces.iter().filter(|surface| is_painted(piece, surface));
    let painted: Vec<SurfaceId> = painted.map(|surface| surface.id).collect();
    let edges = assembly.edges(|surface| painted.contains(surface));
    Ok(edges.into_iter().map(|(_, edges)| edges).sum())
}

fn painted_area(piece: &Piece, furniture: &Furniture) -> Option<Area> {
    let surfaces = furniture.assembly().ok()?.surfaces();
    Some(
        surfaces
            .iter()
            .filter(|surface| is_painted(piece, surface))
            .map(|surface| surface.net)
            .sum(),
    )
}

/// The standard uncertainty of the painted area (JCGM 100, 5.1.2): the sensitivity to each measurement is found
/// by measuring the piece once more with that measurement larger by its standard uncertainty.
fn area_uncertainty(piece: &Piece, furniture: &Furniture, painted: Area) -> Area {
    let mut squares = 0.0;
    let mut add = |changed: Option<Area>| {
        let change = changed.map_or(0.0, |area| (area - painted).as_square_metres());
        squares += change * change;
    };
    for field in furniture.fields() {
        let length = furniture.length(field);
        let step = standard_uncertainty(length, furniture.measures.get(field).is_some());
        add(stepped(step, |step| {
            let mut changed = furniture.clone();
            changed.measures.set(field, length + step);
            painted_area(piece, &changed)
        }));
    }
    // Rows, bays and changes that were not measured take what is left, or were not asked for.
    for (field, length) in measured_apart(piece) {
        add(stepped(standard_uncertainty(length, true), |step| {
            let mut changed = piece.clone();
            changed.stretch(field, step);
            painted_area(piece, &changed.furniture())
        }));
    }
    Area::square_metres(squares.sqrt())
}

/// Every measured length of rows, bays and changes.
fn measured_apart(piece: &Piece) -> Vec<(FieldId, Length)> {
    let mut list = Vec::new();
    for upper in [false, true] {
        for (i, bay) in piece.bays_of(upper).iter().enumerate() {
            let place = BayPlace { upper, bay: i + 1 };
            list.extend(
                bay.width
                    .as_ref()
                    .map(|width| (FieldId::BayWidth(place), width.length())),
            );
            for (r, row) in bay.rows.iter().enumerate() {
                let height = row.height.as_ref().map(Reading::length);
                list.extend(height.map(|height| (FieldId::RowHeight(place, r + 1), height)));
            }
        }
    }
    for (change, of) in piece.changes.iter().enumerate() {
        for ((item, key), reading) in &of.readings {
            let field = FieldId::Change {
                change,
                item: *item,
                key,
            };
            list.push((field, reading.length()));
        }
    }
    list
}

/// A step up, or down where a step up does not fit.
fn stepped(step: Length, area: impl Fn(Length) -> Option<Area>) -> Option<Area> {
    area(step).or_else(|| area(step * -1.0))
}

/// What the first coat of a stage goes onto: only the first stage that has coats meets the ground itself.
fn ground(piece: &Piece, stage: Stage) -> Ground {
    let first = Stage::ALL
        .into_iter()
        .find(|stage| piece.scheme.of(*stage).coats > 0);
    if first == Some(stage) {
        piece.scheme.ground
    } else {
        Ground::Sealed
    }
}

fn application(
    piece: &Piece,
    stage: Stage,
    tool: &'static Tool,
    area: AreaEstimate,
) -> Option<Application<'static>> {
    let StageCoats { material, coats, .. } = *piece.scheme.of(stage);
    Some(Application {
        material: coatings::material(material)?,
        tool,
        coats,
        area,
        ground: ground(piece, stage),
        basis: piece.scheme.basis,
    })
}

fn material_line(piece: &Piece, stage: Stage, area: AreaEstimate) -> Option<MaterialLine> {
    let coats = piece.scheme.of(stage);
    let application = application(piece, stage, coatings::tool(coats.tool)?, area)?;
    let can = coatings::can(coats.can)?;
    let amount = application.amount();
    let enough = Enough::judge(&amount, can.volume(), WANTED_CONFIDENCE);
    Some(MaterialLine {
        stage,
        material: application.material,
        tool: application.tool,
        coats: coats.coats,
        amount,
        can,
        enough,
    })
}

fn tool_column(
    piece: &Piece,
    chosen: &[MaterialLine],
    tool: &'static Tool,
    area: AreaEstimate,
) -> ToolColumn {
    let thickest = TOOLS
        .iter()
        .max_by(|a, b| a.wet_film.middle().total_cmp(&b.wet_film.middle()))
        .unwrap_or(tool);
    let figures = chosen.iter().filter(|line| line.coats > 0).filter_map(|line| {
        // The chosen tool's amount is known already.
        let amount = if line.tool == tool {
            line.amount.clone()
        } else {
            application(piece, line.stage, tool, area)?.amount()
        };
        Some(ToolFigure {
            stage: line.stage,
            coats: line.coats,
            enough: Enough::judge(&amount, line.can.volume(), WANTED_CONFIDENCE),
            amount,
            coats_for_equal_film: coats_to_match(tool, thickest, line.coats),
        })
    });
    ToolColumn {
        tool,
        figures: figures.collect(),
    }
}

/// Measurements that nobody took yet, in the order in which one takes them.
pub fn unmeasured(piece: &Piece) -> Vec<FieldId> {
    let furniture = piece.furniture();
    let fields = furniture.fields().into_iter();
    fields
        .filter(|field| furniture.measures.get(field).is_none())
        .map(LengthField::id)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{PieceId, Reading};
    use geometry::{Kind, fields};
    use units::{LengthUnit, System};

    fn nightstand() -> Piece {
        Piece::new(PieceId("n".into()), Kind::Nightstand, System::UsCustomary)
    }

    fn measured(mut piece: Piece) -> Piece {
        let furniture = piece.furniture();
        for field in furniture.fields() {
            let inches = furniture.length(field).as_inches();
            piece.readings.insert(
                field.key,
                Reading::new(&format!("{inches}"), LengthUnit::Inch).unwrap(),
            );
        }
        piece
    }

    #[test]
    fn measuring_makes_the_area_surer() {
        let guessed = takeoff(&nightstand()).unwrap().painted;
        let measured = takeoff(&measured(nightstand())).unwrap().painted;
        assert_eq!(guessed.area, measured.area);
        let share = |estimate: AreaEstimate| estimate.standard_uncertainty / estimate.area;
        assert!(share(guessed) > 0.1, "{}", share(guessed));
        assert!(share(measured) < 0.004, "{}", share(measured));
    }

    #[test]
    fn a_pair_takes_twice_the_paint_but_dirties_the_tool_once() {
        let one = takeoff(&measured(nightstand())).unwrap();
        let two = takeoff(&Piece {
            count: 2,
            ..measured(nightstand())
        })
        .unwrap();
        let shares = |t: &Takeoff| t.materials[1].amount.shares.clone();
        assert!((shares(&two)[0].volume / shares(&one)[0].volume - 2.0).abs() < 1e-9);
        assert_eq!(shares(&one)[1], shares(&two)[1]);
    }

    #[test]
    fn a_choice_wins_over_the_default() {
        let mut piece = nightstand();
        let before = takeoff(&piece).unwrap();
        let left = SurfaceChoice {
            zone: None,
            painted: Some(false),
        };
        piece.choices.insert("top/top".into(), left);
        let after = takeoff(&piece).unwrap();
        let top = before
            .surfaces
            .iter()
            .find(|line| line.surface.id.to_string() == "top/top")
            .unwrap();
        let lost = (before.painted_each - after.painted_each).as_square_metres();
        assert!((lost - top.surface.net.as_square_metres()).abs() < 1e-12);
    }

    #[test]
    fn only_the_first_stage_meets_a_porous_ground() {
        let mut piece = nightstand();
        piece.scheme.ground = Ground::Porous;
        assert_eq!(
            Stage::ALL.map(|s| ground(&piece, s)),
            [Ground::Porous, Ground::Sealed, Ground::Sealed]
        );
        piece.scheme.stages[0].coats = 0;
        assert_eq!(
            Stage::ALL.map(|s| ground(&piece, s)),
            [Ground::Sealed, Ground::Porous, Ground::Sealed]
        );
    }

    #[test]
    fn a_piece_that_cannot_be_says_which_measurement() {
        let mut piece = nightstand();
        piece
            .readings
            .insert("height", Reading::new("2", LengthUnit::Inch).unwrap());
        let problems = takeoff(&piece).unwrap_err();
        assert_eq!(problems[0].field(), Some(fields::HEIGHT.id()));
    }
}
