//! M. Najafi, Trenchless Technology Piping: Installation and Inspection, ASCE Press and McGraw-Hill, 2010 (author and
//! year recalled). Single pages read in a page-by-page copy: pp. 7-8, 32, 217-226, 272-273, 323, 347.

use crate::found::{
    Found, Outcome, checked, close, drive, holds, modulus, near, needed, pages, pull_stress, q, ratio, scheme,
};
use jackpull::check::Subject;
use jackpull::handbook::{Method, MethodLimitRow};
use jackpull::law::Law;
use jackpull::laws::pull::FinalBore;
use jackpull::quantity::{Length, Measure, Pressure};
use jackpull::{Handbook, read_drive};
use std::f64::consts::FRAC_PI_4;
use std::sync::Arc;

pages!(
    less_than_half_of_the_yield_page_224,
    medium_density_page_273,
    buoyant_weight_equation_5_22_page_222,
    table_1_5_page_32_pilot_tube,
    table_1_5_page_32_directional_drilling,
    table_1_5_page_32_auger_boring,
    pilot_accuracy_page_323,
    overcut_against_settlement_page_347,
);

/// The safe pull stress of HDPE is less than half of the nominal tensile strength of 3,200 psi.
fn less_than_half_of_the_yield_page_224(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let half = q::<Pressure>("3200 psi") / 2.0;
    for edition in ["astm_f1962_1999", "ppi_2008"] {
        for up_to in ["0.5 h", "1 h", "12 h", "24 h"] {
            let (stress, _) = pull_stress(handbook, edition, "hdpe", up_to)?;
            holds(found, &format!("{edition}, {up_to}: stress of HDPE below 1600 psi"), stress < half);
        }
    }
    let row = needed(handbook.pe_material()?.get("hdpe"), || "hdpe".to_owned())?;
    near(found, "nominal tensile strength of HDPE", row.value.tensile_yield.value, "3200 psi", "50 psi");
    Ok(())
}

/// For MDPE the heads are to be multiplied by 0.75.
fn medium_density_page_273(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    /// One round figure for all durations, from older moduli: those of the handbook of 2008 lie up to 9 % above it.
    const OTHER_MODULI: f64 = 0.09;
    for duration in ["0.5 h", "1 h", "2 h", "10 h", "12 h", "24 h", "100 h", "1000 h", "1 year", "10 year", "50 year"] {
        let medium = modulus(handbook, "pe2xxx", duration)? / modulus(handbook, "pe3xxx", duration)?;
        close(found, &format!("MDPE over HDPE, {duration}"), medium, "0.75", OTHER_MODULI);
    }
    Ok(())
}

/// w_b = 0.5 D² - w_a in pounds and inches, slurry of specific gravity 1.5.
fn buoyant_weight_equation_5_22_page_222(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let slurry = ratio(handbook, "pull.fluid_heavy")?;
    near(found, "uplift per squared inch of diameter", slurry * (FRAC_PI_4 * 62.4 / 144.0), "0.5", "0.05");
    Ok(())
}

fn limit(handbook: &Handbook, method: Method, place: usize) -> Result<MethodLimitRow, crate::found::Stop> {
    let table = handbook.method_limit()?;
    let row = table.rows.iter().filter(|row| row.value.method.value == method).nth(place);
    Ok(needed(row, || format!("{}, row {place}", method.key()))?.value.clone())
}

fn diameters_agree(found: &mut Found, row: &MethodLimitRow, from: &str, to: &str, within: &str) -> Outcome {
    let from_row = needed(row.od_from.as_ref(), || "the smallest diameter".to_owned())?;
    let to_row = needed(row.od_to.as_ref(), || "the largest diameter".to_owned())?;
    near(found, "smallest diameter", from_row.value, from, within);
    near(found, "largest diameter", to_row.value, to, within);
    Ok(())
}

/// The metric columns of the reading of the table, rounded to 10 mm and 10 m, as they are used in the summary of
/// method ranges (150 to 760 mm, 90 m). Figure 1.3, p. 8, also ends at 30 in; it begins at 4 in, another gap.
fn table_1_5_page_32_pilot_tube(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let row = limit(handbook, Method::PipeJacking, 0)?;
    diameters_agree(found, &row, "150 mm", "760 mm", "5 mm")?;
    near(found, "largest diameter of Fig. 1.3", needed(row.od_to, String::new)?.value, "30 in", "0.5 in");
    near(found, "length of pilot-tube drives", row.length.value, "90 m", "5 m");
    let drive = drive(
        handbook,
        "
length: 20 m
groundwater: none
lubrication: none
ground: [{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm }]
candidates: [{ material: clay, size: 300 mm, outside_diameter: 360 mm, end_bearing_area: 0.03 m2 }]
",
    )?;
    let scheme = crate::found::scheme(&drive, Method::PipeJacking)?;
    let (_, longest) = needed(crate::found::checked(&scheme, Subject::Length)?.high(), String::new)?;
    near(found, "length that a jacked pipe is checked against", Length::from_si(longest.si), "300 ft", "0.5 ft");
    Ok(())
}

/// Mini drilling as an association's page has it: pipe to 12 in, bore below 600 ft. Maxi drilling, the next row of the
/// same table, begins at 24 in and 2,000 ft.
fn table_1_5_page_32_directional_drilling(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let mini = limit(handbook, Method::Pullback, 0)?;
    diameters_agree(found, &mini, "50 mm", "300 mm", "5 mm")?;
    near(found, "length of mini drilling", mini.length.value, "600 ft", "0.5 ft");
    let midi = limit(handbook, Method::Pullback, 1)?;
    diameters_agree(found, &midi, "12 in", "24 in", "0.5 in")?;
    near(found, "length of midi drilling", midi.length.value, "2000 ft", "0.5 ft");
    Ok(())
}

/// The text repeats the accuracy of Table 1.5; over the 91 m of a drive it is a slope of 0.028 %.
fn pilot_accuracy_page_323(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let accuracy = handbook.length("grade.pilot_accuracy")?.value;
    near(found, "accuracy of the pilot", accuracy, "1 in", "0.5 in");
    let longest = limit(handbook, Method::PipeJacking, 0)?.length.value;
    near(found, "slope error over the longest drive", accuracy / longest, "0.028 %", "0.0005 %");
    Ok(())
}

/// The final bore is kept to 1.5 times the product diameter against settlement, the ratio of the agency's row.
fn overcut_against_settlement_page_347(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let row = needed(handbook.bore_rule()?.get("agency_most"), || "the agency's bore".to_owned())?;
    let outside_diameter = q::<Length>("10 in");
    let bore = FinalBore { outside_diameter, times: row.value.times.value, plus: row.value.plus.value };
    near(found, "largest bore of a 10 in pipe", bore.value(), "15 in", "0.01 in");
    Ok(())
}

/// Table 1.5: conventional auger boring, one per cent of the bore either way: 400 mm over 40 m, and no sewer.
fn table_1_5_page_32_auger_boring(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let drive = read_drive(
        "service: gravity_sewer\nlength: 40 m\nlaunch: { invert_depth: 4 m }\ngrade: 1 %\ngroundwater: none\n\
         lubrication: none\nspoil: auger\nstem: { outside_diameter: none }\nguidance: none\n\
         ground: [{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm }]\n\
         rig: { thrust: 60 MN, pull: 60 MN }\ncandidates: [{ material: clay, size: 10 in }]\n",
        handbook,
    )?;
    let invert = checked(&scheme(&drive, Method::PipeJacking)?, Subject::Invert)?;
    for level in [invert.likely(), invert.high()] {
        let (error, _) = needed(level, || "the error of the line".to_owned())?;
        near(found, "an auger casing that is not steered", Length::from_si(error.si), "400 mm", "1 mm");
    }
    Ok(())
}
