//! Tests of the takeoff for programs.

use super::*;
use crate::invented_workshop;
use serde_json::Value;

fn json(working: bool) -> Value {
    let loaded = Loaded {
        workshop: invented_workshop(),
        notices: vec![],
    };
    serde_json::to_value(report(&loaded, working)).unwrap()
}

fn zones_sum(zones: &Value) -> f64 {
    let areas = zones.as_array().unwrap().iter().flat_map(|zone| {
        let lie = zone["netByOrientation"].as_object().unwrap();
        lie.values()
            .map(|area| area.as_f64().unwrap())
            .collect::<Vec<_>>()
    });
    areas.sum()
}

#[test]
fn the_json_adds_up() {
    let value = json(false);
    let pieces = value["pieces"].as_array().unwrap();
    assert_eq!(pieces.len(), 2);
    for piece in pieces {
        let mut painted = 0.0;
        for surface in piece["surfaces"].as_array().unwrap() {
            let area = |value: &Value| value.as_f64().unwrap();
            let covers = surface["deductions"].as_array().unwrap();
            let covered: f64 = covers.iter().map(|cover| area(&cover["squareMetres"])).sum();
            let net = area(&surface["netSquareMetres"]);
            let left = area(&surface["grossSquareMetres"]) - covered;
            // Areas below the minimum are dropped as rounding errors.
            assert!((left - net).abs() < 1e-6, "{surface}");
            painted += if surface["painted"] == true { net } else { 0.0 };
        }
        assert!((painted - piece["paintedEachSquareMetres"].as_f64().unwrap()).abs() < 1e-9);
        for zone in piece["zones"].as_array().unwrap() {
            let [gross, deducted, net] = ["gross", "deducted", "net"]
                .map(|area| zone[format!("{area}SquareMetres")].as_f64().unwrap());
            assert!((gross - deducted - net).abs() < 1e-5, "{zone}");
        }
        let of_zones: f64 = zones_sum(&piece["zones"]);
        assert!((of_zones - painted).abs() < 1e-9, "{of_zones} {painted}");
        let all = painted * piece["count"].as_f64().unwrap();
        assert!((all - piece["paintedSquareMetres"].as_f64().unwrap()).abs() < 1e-9);
        for stage in piece["materials"].as_array().unwrap() {
            let litres = |key: &str| stage[key].as_f64().unwrap();
            assert!(
                litres("lowLitres") <= litres("likelyLitres")
                    && litres("likelyLitres") <= litres("highLitres")
            );
        }
        assert_eq!(piece["materials"].as_array().unwrap().len(), 3);
        assert_eq!(piece["ways"].as_array().unwrap().len(), 4);
    }
}

#[test]
fn the_working_adds_up_to_the_best_estimate() {
    let value = json(true);
    for piece in value["pieces"].as_array().unwrap() {
        let materials = piece["materials"].as_array().unwrap();
        let workings = piece["workings"].as_array().unwrap();
        assert_eq!(workings.len(), materials.len());
        for working in workings {
            let line = materials.iter().find(|line| line["id"] == working["id"]).unwrap();
            let litres = |value: &Value| value.as_f64().unwrap();
            let layers = working["layers"].as_array().unwrap().iter();
            let on_zones: f64 = layers
                .map(|layer| litres(&layer["litres"]["result"]["value"]))
                .sum();
            let kept = working["kept"].as_array().unwrap().iter();
            let kept: f64 = kept.map(|kept| litres(&kept["value"])).sum();
            let best = litres(&line["bestEstimateLitres"]);
            assert!((on_zones + kept - best).abs() < 1e-9, "{working}");
            assert!((litres(&working["sumLitres"]) - best).abs() < 1e-9);
        }
    }
}

#[test]
fn what_was_mended_in_the_file_and_what_does_not_fit_is_told() {
    let text = "{\"kind\": \"coatwright-workshop\", \"version\": 3, \"units\": \"metric\", \"pieces\": [
        {\"id\": \"a\", \"name\": \"A\", \"furniture\": \"frame\", \"count\": 100000,
         \"readings\": {\"width\": {\"typed\": \"9000\", \"unit\": \"mm\"}}}]}";
    let value = serde_json::to_value(report(&crate::format::load(text).unwrap(), false)).unwrap();
    assert_eq!(
        value["mended"][0],
        "A: the number of identical pieces was out of range. It is now 99."
    );
    assert_eq!(
        value["pieces"][0]["problems"][0],
        "Width is 9000 mm. The maximum is 3000 mm. Check the unit."
    );
    assert_eq!(value["together"], Value::Array(vec![]));
}
