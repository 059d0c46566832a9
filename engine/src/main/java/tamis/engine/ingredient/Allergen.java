package tamis.engine.ingredient;

/** Foods that regulations name because they can harm some people. */
public enum Allergen {
  CEREAL_GLUTEN,
  WHEAT,
  CRUSTACEAN,
  MOLLUSC,
  EGG,
  FISH,
  PEANUT,
  SOY,
  MILK,
  TREE_NUT,
  CELERY,
  MUSTARD,
  SESAME,
  SULPHITE,
  LUPIN,
  BUCKWHEAT
}
